"""Approved pictures: small PNG files with few colours, compared so that a pixel more or less is no matter."""

from pathlib import Path

import numpy as np
import numpy.typing as npt
from PySide6.QtGui import QImage, qRgb

Pixels = npt.NDArray[np.uint8]
FOLDER = Path(__file__).parent / "approved"
COLOURS = 64
BLOCK = 8
"""Pixels of a side of the squares whose means are compared."""
FAR = 22.0
"""How far, of 255, a mean may be off: what other ways of smoothing letters leave far below."""
MOST_OFF = 0.0008
"""What share of the squares may be off."""


def few_colours(pixels: Pixels, count: int = COLOURS) -> tuple[npt.NDArray[np.uint8], Pixels]:
    """A picture in its commonest colours: for each pixel the number of its colour, and the colours."""
    flat = pixels.reshape(-1, 3).astype(np.int32)
    keys = flat[:, 0] << 16 | flat[:, 1] << 8 | flat[:, 2]
    found, where, counts = np.unique(keys, return_inverse=True, return_counts=True)
    colours = np.stack([found >> 16, found >> 8 & 255, found & 255], axis=-1)
    # Rare colours are blends of others along letters and lines; a bright accent is rare too, so nearness decides.
    kept = _spread(colours, counts, count)
    distances = ((colours[:, None, :] - colours[kept][None]) ** 2).sum(axis=-1)
    nearest = distances.argmin(axis=1)
    numbers = nearest[where.reshape(-1)].reshape(pixels.shape[:2]).astype(np.uint8)
    return numbers, colours[kept].astype(np.uint8)


def _spread(colours: npt.NDArray[np.int32], counts: npt.NDArray[np.intp], count: int) -> list[int]:
    """The numbers of colours to keep: the commonest first, then those farthest from the ones that are kept."""
    kept = [int(counts.argmax())]
    distances = ((colours - colours[kept[0]]) ** 2).sum(axis=-1)
    while len(kept) < min(count, len(colours)):
        farthest = int((distances * np.sqrt(counts)).argmax())
        if distances[farthest] == 0:
            break
        kept.append(farthest)
        distances = np.minimum(distances, ((colours - colours[farthest]) ** 2).sum(axis=-1))
    return kept


def write(name: str, pixels: Pixels, folder: Path = FOLDER) -> Path:
    """Keep a picture as approved."""
    numbers, colours = few_colours(pixels)
    high, wide = numbers.shape
    padded = np.zeros((high, (wide + 3) // 4 * 4), np.uint8)
    padded[:, :wide] = numbers
    image = QImage(padded.tobytes(), wide, high, padded.shape[1], QImage.Format.Format_Indexed8)
    image.setColorTable([qRgb(*map(int, colour)) for colour in colours])
    folder.mkdir(exist_ok=True)
    path = folder / f"{name}.png"
    assert image.save(str(path), "PNG", 0)  # type: ignore[call-overload]  # the stubs want bytes here, Qt a str
    return path


def read(path: Path) -> Pixels:
    """A picture from its file."""
    image = QImage(str(path)).convertToFormat(QImage.Format.Format_RGB888)
    wide, high, stride = image.width(), image.height(), image.bytesPerLine()
    return (
        np.frombuffer(bytes(image.constBits()), np.uint8).reshape(high, stride)[:, : wide * 3].reshape(high, wide, 3)
    )


def share_off(one: Pixels, other: Pixels) -> float:
    """What share of two pictures looks different; 1 where they are not of one size."""
    if one.shape != other.shape:
        return 1.0
    return float((np.abs(_means(one) - _means(other)).max(axis=-1) > FAR).mean())


def _means(pixels: Pixels) -> npt.NDArray[np.float64]:
    high, wide = (side // BLOCK * BLOCK for side in pixels.shape[:2])
    squares = pixels[:high, :wide].reshape(high // BLOCK, BLOCK, wide // BLOCK, BLOCK, 3)
    means: npt.NDArray[np.float64] = squares.mean(axis=(1, 3))
    return means


def marked(seen: Pixels, approved: Pixels) -> Pixels:
    """A picture with everything pale but what differs from the approved one."""
    if seen.shape != approved.shape:
        return seen
    off = np.abs(_means(seen) - _means(approved)).max(axis=-1) > FAR
    where = np.kron(off, np.ones((BLOCK, BLOCK))).astype(bool)
    shown = (seen.astype(int) + 3 * 255) // 4
    high, wide = where.shape
    shown[:high, :wide][where] = seen[:high, :wide][where]
    return shown.astype(np.uint8)
