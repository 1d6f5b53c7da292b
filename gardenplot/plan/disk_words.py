"""What a disk answers to a request, in plain words."""

import errno

from gardenplot.words import _

_SAID = {
    "ENOSPC": _("the disk is full"),
    "EDQUOT": _("your share of the disk is full"),
    "EACCES": _("permission is refused"),
    "EPERM": _("permission is refused"),
    "EROFS": _("the disk can only be read"),
    "EIO": _("the disk reports a fault"),
    "ENOENT": _("there is no such file or folder"),
    "ENOTDIR": _("there is no such folder"),
    "EISDIR": _("that is a folder"),
    "ENAMETOOLONG": _("the name is too long"),
    "EFBIG": _("it is larger than a file can be on that disk"),
    "EINTR": _("it was interrupted; try again"),
    "ETXTBSY": _("another program holds it"),
    "EBUSY": _("another program holds it"),
}


def why(error: OSError) -> str:
    """The reason without names of files, which an error of the system may hold."""
    return _SAID.get(errno.errorcode.get(error.errno or 0, ""), error.strerror or type(error).__name__)
