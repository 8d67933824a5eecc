//! What stands behind the `#` in the address bar: version, view and the manner it is shown in, design.
use super::Manner;
use super::lesson::Lesson;
use super::link::{self, LinkFault, READ_LIMIT, VERSION};
use crate::design::Design;

/// A view of the page, by the word it has in the address.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum View {
    /// The side elevation with its plots.
    #[default]
    Elevation,
    /// Every check, with its formula and its curve.
    Strength,
    /// A part cut free with the forces on it.
    Forces,
    /// The end elevation: how it sways, twists and rattles.
    Sway,
    /// The parts on sheets.
    Sheets,
    /// Where the holes go, and how exactly.
    Drilling,
    /// What to buy.
    Hardware,
    /// What to do in what order.
    Steps,
    /// All that goes on the shop wall, for paper.
    Packet,
    /// Tables from what one needs.
    Targets,
    /// What would help this design most.
    Helps,
    /// This design beside another.
    Compare,
    /// The lessons, to choose from.
    Lessons,
    /// A lesson; it has no tab of its own.
    Lesson(Lesson),
    /// The designs that are kept, and how they are passed on.
    Shelf,
    /// Where formulas and values come from, and where they end.
    Sources,
}

impl View {
    /// Every view that has a tab, in their order.
    pub const ALL: [Self; 15] = [
        Self::Elevation,
        Self::Strength,
        Self::Forces,
        Self::Sway,
        Self::Sheets,
        Self::Drilling,
        Self::Hardware,
        Self::Steps,
        Self::Packet,
        Self::Targets,
        Self::Helps,
        Self::Compare,
        Self::Lessons,
        Self::Shelf,
        Self::Sources,
    ];

    /// Its word in the address, for ever.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Elevation => "elevation",
            Self::Strength => "strength",
            Self::Forces => "forces",
            Self::Sway => "sway",
            Self::Sheets => "sheets",
            Self::Drilling => "drilling",
            Self::Hardware => "hardware",
            Self::Steps => "steps",
            Self::Packet => "packet",
            Self::Targets => "targets",
            Self::Helps => "helps",
            Self::Compare => "compare",
            Self::Lessons => "lessons",
            Self::Lesson(lesson) => lesson.word(),
            Self::Shelf => "shelf",
            Self::Sources => "sources",
        }
    }

    /// The view of a word.
    #[must_use]
    pub fn of(word: &str) -> Option<Self> {
        let lessons = Lesson::ALL.into_iter().map(Self::Lesson);
        Self::ALL.into_iter().chain(lessons).find(|view| view.word() == word)
    }

    /// Whether it shows the present design; a view that does not is the same whatever that is.
    #[must_use]
    pub const fn is_about_the_design(self) -> bool {
        !matches!(self, Self::Shelf | Self::Targets | Self::Lessons | Self::Lesson(_))
    }

    /// The view whose tab it stands under: its own, or that of all lessons.
    #[must_use]
    pub const fn tab(self) -> Self {
        if self.is_a_lesson() { Self::Lessons } else { self }
    }

    /// Whether it is one of the lessons, with a design of its own.
    #[must_use]
    pub const fn is_a_lesson(self) -> bool {
        matches!(self, Self::Lesson(_))
    }

    /// Whether the tabs from this one on answer another question than those before it.
    #[must_use]
    pub const fn begins_a_group(self) -> bool {
        matches!(self, Self::Sheets | Self::Targets | Self::Lessons | Self::Sources)
    }

    /// Its title, on its tab and over its page.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Self::Elevation => "Elevation",
            Self::Strength => "Strength",
            Self::Forces => "Forces",
            Self::Sway => "Sway",
            Self::Sheets => "Sheets",
            Self::Drilling => "Drilling",
            Self::Hardware => "Hardware",
            Self::Steps => "Build order",
            Self::Packet => "Packet",
            Self::Targets => "Targets",
            Self::Helps => "What helps",
            Self::Compare => "Compare",
            Self::Lessons => "Lessons",
            Self::Lesson(lesson) => lesson.title(),
            Self::Shelf => "Shelf",
            Self::Sources => "Sources",
        }
    }
}

/// What a fragment opens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opened {
    /// The view.
    pub view: View,
    /// How it is shown.
    pub manner: Manner,
    /// The design; none where the view needs none and the link brings none.
    pub design: Option<Design>,
}

/// The fragment for a view of a design, without the `#`.
#[must_use]
pub fn write(view: View, design: &Design) -> String {
    write_in(view, &Manner::default(), design)
}

/// The same in a manner.
#[must_use]
pub fn write_in(view: View, manner: &Manner, design: &Design) -> String {
    format!("{}/{}", write_alone(view, manner), link::encode(design))
}

/// The fragment for a view that needs no design.
#[must_use]
pub fn write_alone(view: View, manner: &Manner) -> String {
    format!("{VERSION}/{}{}", view.word(), manner.write())
}

/// Why a fragment cannot be opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum AddressFault {
    /// Written by a newer version of the program.
    Newer,
    /// Not an address of this program, or a damaged one.
    Link(LinkFault),
}

impl core::fmt::Display for AddressFault {
    fn fmt(&self, form: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Newer => form.write_str(
                "This link was made by a newer version of the program. Load the page anew, then open it again.",
            ),
            Self::Link(fault) => fault.fmt(form),
        }
    }
}

/// What a fragment opens, with or without its `#`. An empty fragment is nothing; an unknown view is the elevation.
///
/// # Errors
/// [`AddressFault`], whose text says what is wrong.
pub fn read(fragment: &str) -> Result<Option<Opened>, AddressFault> {
    let text = fragment.strip_prefix('#').unwrap_or(fragment);
    if text.is_empty() {
        return Ok(None);
    }
    if text.len() > READ_LIMIT {
        return Err(AddressFault::Link(LinkFault::TooLong));
    }
    let mut parts = text.splitn(3, '/');
    let (version, view, design) = (parts.next().unwrap_or_default(), parts.next(), parts.next());
    match (version.parse::<u32>(), view) {
        (Ok(1), Some(words)) => {
            let mut words = words.split(',');
            let view = words.next().and_then(View::of);
            let design = match (design, view) {
                (None, Some(view)) if !view.is_about_the_design() => None,
                (None, _) => return Err(AddressFault::Link(LinkFault::Broken)),
                (Some(design), _) => Some(link::decode(design).map_err(AddressFault::Link)?),
            };
            Ok(Some(Opened { view: view.unwrap_or_default(), manner: Manner::read(words), design }))
        }
        (Ok(version), _) if version > 1 => Err(AddressFault::Newer),
        _ => Err(AddressFault::Link(LinkFault::Broken)),
    }
}
