"""What is different between any two states of a build, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from hoistbook.authored.records import BoostBySpeed, Given, Join
from hoistbook.history.state import Change, ChangeKind, Dated, PartState, State, Status, own_count
from hoistbook.history.words import join_words, value_words


def differences(before: State, after: State) -> tuple[Change, ...]:
    """Return what two states differ in: the car, the settings, the parts, the joins.

    The states need not follow one another; what was done and undone between them is no
    difference. Of a later state before an earlier one, the changes lead back.
    """
    return (
        *set_anew("car", before.car, after.car, after.episode),
        *set_anew("settings", before.settings, after.settings, after.episode),
        *changed_parts(before, after),
        *changed_joins(before, after),
    )


def set_anew(
    subject: str,
    before: Mapping[str, Dated[Given]] | Mapping[str, Dated[Given | BoostBySpeed]],
    after: Mapping[str, Dated[Given]] | Mapping[str, Dated[Given | BoostBySpeed]],
    episode: int,
) -> Iterator[Change]:
    """Yield what is set differently of the car or its settings."""
    for key in (*after, *(key for key in before if key not in after)):
        old, new = before.get(key), after.get(key)
        old_words = value_words(old.value) if old else None
        new_words = value_words(new.value) if new else None
        if old_words != new_words:
            yield Change(
                subject=f"{subject}:{key}",
                kind=ChangeKind.SET,
                before=old_words,
                after=new_words,
                because=None,
                episode=new.episode if new else episode,
            )


def changed_parts(before: State, after: State) -> Iterator[Change]:
    """Yield what became of parts between two states."""
    for id_ in (*after.parts, *(id_ for id_ in before.parts if id_ not in after.parts)):
        old, new = before.parts.get(id_), after.parts.get(id_)
        if new is None:
            yield Change(
                subject=f"part:{id_}",
                kind=ChangeKind.NOT_KNOWN,
                before=status_words(old),
                after=None,
                because=None,
                episode=after.episode,
            )
        elif old is None or _standing(old) != _standing(new):
            yield changed_part(id_, old, new, after)


def changed_part(id_: str, old: PartState | None, new: PartState, after: State) -> Change:
    """Return the change of one part."""
    kind = kind_of_change(old, new)
    words = status_words(new)
    if kind is ChangeKind.REPLACED and new.replaced_by is not None:
        words = f"replaced by {after.parts[new.replaced_by].part.name}"
    return Change(
        subject=f"part:{id_}",
        kind=kind,
        before=status_words(old),
        after=words,
        because=new.because,
        episode=new.changed_in,
    )


def kind_of_change(old: PartState | None, new: PartState) -> ChangeKind:
    """Return what sort of change it is that a part went through."""
    if new.replaced_by is not None and (old is None or old.replaced_by != new.replaced_by):
        return ChangeKind.REPLACED
    if new.broken and not (old and old.broken) and new.status is not Status.GONE:
        return ChangeKind.BROKE
    if new.built_into is not None and new.built_in == new.changed_in:
        return ChangeKind.BUILT_IN
    if old is not None and old.status is new.status:
        return kind_of_part_change(old, new)
    if new.status is Status.ON_HAND:
        return ChangeKind.CAME if new.fitted_in is None else ChangeKind.TAKEN_OFF
    return {
        Status.PLANNED: ChangeKind.PLANNED,
        Status.ORDERED: ChangeKind.ORDERED,
        Status.FITTED: ChangeKind.FITTED,
        Status.GONE: ChangeKind.GONE,
    }[new.status]


def kind_of_part_change(old: PartState, new: PartState) -> ChangeKind:
    """Return what sort of change it is when it befell only some of a count."""
    if (new.pieces_left or 0) < (old.pieces_left or 0):
        return ChangeKind.BROKE if new.broke_in == new.changed_in else ChangeKind.GONE
    more = new.pieces_fitted > old.pieces_fitted
    return ChangeKind.FITTED if more else ChangeKind.TAKEN_OFF


def _standing(state: PartState) -> tuple[object, ...]:
    return state.status, state.broken, state.replaced_by, state.pieces_left, state.pieces_fitted


def status_words(state: PartState | None) -> str | None:
    """Return how a part stands, in words."""
    if state is None:
        return None
    words = state.how_gone or str(state.status)
    left, fitted = state.pieces_left or 0, state.pieces_fitted
    count = own_count(state.part)
    if state.status is Status.FITTED and fitted < left:
        words = f"{fitted} of {left} fitted"
    if state.status is not Status.GONE and left < count:
        words = f"{words}, {left} of {count} left"
    return f"{words}, broken" if state.broken and state.status is not Status.GONE else words


def changed_joins(before: State, after: State) -> Iterator[Change]:
    """Yield the joins that hold in only one of two states."""
    old = {join_words(each.value): each for each in before.joins}
    new = {join_words(each.value): each for each in after.joins}
    for words, each in old.items():
        if words not in new:
            yield _join_change(each.value, ChangeKind.PARTED, words, None, after.episode)
    for words, each in new.items():
        if words not in old:
            yield _join_change(each.value, ChangeKind.JOINED, None, words, each.episode)


def _join_change(
    join: Join, kind: ChangeKind, before: str | None, after: str | None, episode: int
) -> Change:
    return Change(
        subject=f"join:{join.a.part} {join.a.end}",
        kind=kind,
        before=before,
        after=after,
        because=join.knowingly if kind is ChangeKind.JOINED else None,
        episode=episode,
    )
