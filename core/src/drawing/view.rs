//! What the reader has chosen to see, and how much room there is.
use crate::quantity::System;

/// How the picture is arranged.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Layout {
    /// Drawing, pole and plots side by side at one scale and one level.
    Wide,
    /// Drawing on top, plots beneath it, each row with its own pole.
    Narrow,
    /// One elevation with the dimensions of the frame, for paper; no plots, nothing to touch.
    Print,
}

/// What is drawn over the elevation, each by itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[expect(clippy::struct_excessive_bools, reason = "one switch on the page each")]
pub struct Show {
    /// Dimensions.
    pub dimensions: bool,
    /// Joint forces as arrows to one scale.
    pub forces: bool,
    /// Bending along the arms, on the side that is pulled.
    pub bending: bool,
    /// The shape under load, larger than life.
    pub bent: bool,
    /// The load and its overhang.
    pub load: bool,
    /// Where all weight comes down between the casters.
    pub support: bool,
}

impl Default for Show {
    fn default() -> Self {
        Self { dimensions: true, forces: true, bending: false, bent: false, load: true, support: false }
    }
}

/// A plot the reader can choose: something over the deck's height.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Chart {
    /// Force along the screw: raising, without friction, lowering.
    ScrewForce,
    /// How far the deck gives under the load, and what play adds.
    Sag,
    /// Force on the crank's handle, raising and lowering.
    CrankForce,
    /// Force on the wheels of either axle, raising.
    Wheels,
    /// Force on the pivots that carry most, raising.
    Pivots,
    /// The largest bending moment in the arms A and in the arms B.
    ArmMoment,
    /// How far the deck turns under the load.
    Tilt,
    /// Force on the floor under either pair of casters.
    Casters,
    /// A figure of the slow report, beside the end elevation only.
    Sway(SwayChart),
}

/// A plot of the slow report.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SwayChart {
    /// How far the deck gives sideways under a push.
    Give,
    /// The load under which the table collapses as a multiple of its load.
    Multiple,
    /// How far the deck rattles.
    Rattle,
    /// How far the deck twists under a couple.
    Twist,
}

impl SwayChart {
    /// All of them, the most telling first.
    pub const ALL: [Self; 4] = [Self::Give, Self::Multiple, Self::Rattle, Self::Twist];
}

impl Chart {
    /// Every chart beside the side elevation, in the order in which they are offered.
    pub const ALL: [Self; 8] = [
        Self::ScrewForce,
        Self::Sag,
        Self::CrankForce,
        Self::Wheels,
        Self::Pivots,
        Self::ArmMoment,
        Self::Tilt,
        Self::Casters,
    ];
}

/// The room for a picture and what the reader wants in it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct View {
    /// Width of the picture, whole px; at least 240 is used.
    pub width: u32,
    /// Height of the picture, whole px; at least 320 is used. In [`Layout::Narrow`] the picture becomes as high as it
    /// needs and this is the height of the window, of which the elevation takes at most two thirds.
    pub height: u32,
    /// Height kept free at the top for what the page lays over the picture, whole px.
    pub head: u32,
    /// How it is arranged.
    pub layout: Layout,
    /// Units of all figures.
    pub system: System,
    /// What is drawn over the elevation.
    pub show: Show,
    /// Plots from left to right, as many as there is room for; the screw force where the list is empty.
    pub charts: Vec<Chart>,
    /// Number of this drawing and of all, for the title block.
    pub sheet: (u32, u32),
    /// The check whose part is marked, by its name; a check that the design does not have marks nothing.
    pub marked: Option<&'static str>,
    /// What an elevation on paper shows.
    pub on_paper: OnPaper,
}

/// How an elevation stands on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct OnPaper {
    /// One to so much; the largest standard scale that fits where none is given.
    pub ratio: Option<u32>,
    /// Whether the dimensions of the frame stand beneath the floor.
    pub frame: bool,
}

impl Default for OnPaper {
    fn default() -> Self {
        Self { ratio: None, frame: true }
    }
}

impl View {
    /// Whether the reader can touch the picture.
    pub(super) fn live(&self) -> bool {
        self.layout != Layout::Print
    }

    /// A view of the size with everything at its default.
    #[must_use]
    pub fn new(width: u32, height: u32, layout: Layout, system: System) -> Self {
        Self {
            width,
            height,
            head: if layout == Layout::Wide { 36 } else { 8 },
            layout,
            system,
            show: Show::default(),
            charts: vec![Chart::ScrewForce, Chart::Sag],
            sheet: (1, 1),
            marked: None,
            on_paper: OnPaper::default(),
        }
    }
}
