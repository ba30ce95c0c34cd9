"""The workings: each number of each episode has an entry that its links land on."""

from collections.abc import Iterable
from dataclasses import replace

from hoistbook.figures.figure import Figure, Figures, Input, Key, Missing
from hoistbook.pages.desk import Desk, desk_of
from hoistbook.pages.workings import Entry, WorkingsContext, WorkingsIndexContext, workings_pages
from hoistbook.problems import Place
from hoistbook.values.evidence import Evidence
from tests.pages.sample import sample_material

POWER_LINE = Place("episodes/02-second/episode.md", 12, 3, "power")


def power_to_mass(episode: int, subject: str = "engine") -> Figure:
    """Return a figure of two inputs: a power that is a figure itself, and a stated mass."""
    power = Input(
        name="power",
        value=80e3,
        low=71e3,
        high=89e3,
        evidence=Evidence.ESTIMATED,
        origin="power",
        figure=Key("power"),
    )
    mass = Input(
        name="vehicle_mass",
        value=950.0,
        low=931.0,
        high=969.0,
        evidence=Evidence.STATED,
        origin="the car: mass",
        place=POWER_LINE,
    )
    volume = replace(mass, name="volumetric_efficiency", origin="default", place=None)
    return Figure(
        key=Key("power_to_mass", subject),
        value=84.2,
        low=74.0,
        high=94.0,
        evidence=Evidence.ESTIMATED,
        inputs=(power, mass),
        formula="power_to_mass",
        episode=episode,
        notes=("Without driver.",),
        budget=(
            replace(volume, share=0.97, evidence=Evidence.ASSUMED),
            replace(mass, share=0.025),
            replace(power, share=0.005),
        ),
    )


def desk_with(figures: Iterable[Figure | Missing]) -> Desk:
    """Return the sample with more figures, each from its own episode on."""
    material = sample_material()
    more = tuple(figures)
    states = tuple(
        Figures(
            episode=each.episode,
            figures=(*each.figures, *(more_ for more_ in more if more_.episode <= each.episode)),
        )
        for each in material.figures
    )
    return desk_of(replace(material, figures=states))


def page_of(desk: Desk, quantity: str) -> WorkingsContext:
    pages = {page.address: page.context for page in workings_pages(desk)}
    context = pages[f"/workings/{quantity}/"]
    assert isinstance(context, WorkingsContext)
    return context


def the_entry(desk: Desk) -> Entry:
    (entry,) = page_of(desk, "power_to_mass").entries
    return entry


def test_every_figure_of_every_episode_has_an_entry_where_its_links_land() -> None:
    desk = desk_of(sample_material())
    landings = {}
    for page in workings_pages(desk):
        if isinstance(page.context, WorkingsContext):
            rows = (*page.context.entries, *page.context.earlier)
            landings |= {f"{page.address}#{each.id}": each for each in rows}
    shown = {
        desk.workings(each)
        for figures in desk.figures.values()
        for each in figures.figures
        if isinstance(each, Figure)
    }
    assert (
        set(landings)
        == shown
        == {
            "/workings/power/#engine-episode-0",
            "/workings/injector_duty/#engine-episode-0",
            "/workings/injector_duty/#engine-episode-2",
        }
    )


def test_an_entry_puts_the_numbers_into_the_formula() -> None:
    entry = the_entry(desk_with([power_to_mass(2)]))
    assert entry.heading == "The engine, from episode 2 on"
    (equation,) = entry.equations
    assert equation == (
        '<math display="block" class="rows"><mrow>'
        "<mrow><mi>P</mi><mo>/</mo><mi>m</mi></mrow><mo>=</mo>"
        '<mfrac><mrow><mn class="power">80</mn><mtext>\N{NO-BREAK SPACE}kW</mtext></mrow>'
        '<mrow><mn class="vehicle_mass">950</mn><mtext>\N{NO-BREAK SPACE}kg</mtext></mrow>'
        '</mfrac></mrow><mrow><mo form="infix">≈</mo><mn class="result">84</mn>'
        "<mtext>\N{NO-BREAK SPACE}kW/t</mtext></mrow></math>"
    )


def test_an_input_leads_to_its_own_workings_or_to_the_episode_that_states_it() -> None:
    entry = the_entry(desk_with([power_to_mass(2)]))
    assert [
        (each.words, each.value, each.evidence, each.origin.address) for each in entry.inputs
    ] == [
        (
            "power at the crank",
            "80\N{NO-BREAK SPACE}kW",
            "estimated",
            "/workings/power/#engine-episode-0",
        ),
        (
            "mass of the car as driven",
            "950\N{NO-BREAK SPACE}kg",
            "stated",
            "/episodes/2/",
        ),
    ]


def test_the_band_is_told_by_what_makes_it_wide_the_smallest_left_out() -> None:
    entry = the_entry(desk_with([power_to_mass(2)]))
    assert [(each.words, each.share, each.evidence) for each in entry.shares] == [
        (
            "volumetric efficiency, referred to the density in the manifold",
            "97\N{NO-BREAK SPACE}%",
            "assumed",
        ),
        ("mass of the car as driven", "3\N{NO-BREAK SPACE}%", "stated"),
    ]


def test_the_formula_stands_once_with_its_source() -> None:
    (formula,) = page_of(desk_with([power_to_mass(0), power_to_mass(2)]), "power_to_mass").formulas
    assert formula.id == "formula-power_to_mass"
    assert formula.summary == "the power to mass"
    assert formula.cited.text
    assert formula.cited.where


def test_where_entries_are_many_the_earlier_ones_are_rows_that_links_still_land_on() -> None:
    many = [power_to_mass(2, f"pipe-{n}") for n in range(20)]
    page = page_of(desk_with([*many, power_to_mass(1)]), "power_to_mass")
    ids = [each.id for each in (*page.entries, *page.earlier)]
    assert sorted(ids) == sorted([*(f"pipe-{n}-episode-2" for n in range(20)), "engine-episode-1"])
    assert 1 <= len(page.entries) < 20
    last = page.earlier[-1]
    assert (last.id, last.heading) == ("engine-episode-1", "The engine, from episode 1 on")
    assert last.put_in == (
        "power at the crank 80\N{NO-BREAK SPACE}kW, "
        "mass of the car as driven 950\N{NO-BREAK SPACE}kg"
    )


def test_what_is_not_known_says_what_to_give() -> None:
    page = page_of(desk_of(sample_material()), "pump_margin")
    assert [(each.quantity.text, each.missing) for each in page.missing] == [
        ("Fuel pump margin", ("flow of pump-2",))
    ]
    assert page.entries == ()


def test_the_index_has_every_figure_and_sets_steps_apart() -> None:
    step = replace(power_to_mass(2), step=True)
    index = next(iter(workings_pages(desk_with([step])))).context
    assert isinstance(index, WorkingsIndexContext)
    assert [each.quantity.address for each in index.rows] == [
        "/workings/power/",
        "/workings/injector_duty/",
        "/workings/pump_margin/",
    ]
    assert [each.quantity.address for each in index.steps] == ["/workings/power_to_mass/"]
