"""Words for people, passed through gettext so that they can be translated."""

import gettext

from gardenplot.files import resource

_catalogue = gettext.translation("gardenplot", resource("words"), fallback=True)

_ = _catalogue.gettext
ngettext = _catalogue.ngettext
