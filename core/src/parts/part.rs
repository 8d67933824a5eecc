//! One kind of piece: what it is cut from, how big, how many, how heavy, where it rides, and how it is worked and joined.
use super::hole::{Contact, Hole, Housing, Joint};
use super::place::Block;
use crate::catalogue::steel::Section;
use crate::quantity::{Density, Length};

/// An arm by its stage, counted from the base, and its letter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct ArmName {
    /// Stage from 1.
    pub stage: usize,
    /// `false`: A, from bottom left to top right; `true`: B, from bottom right to top left.
    pub b: bool,
}

/// What a piece moves with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rides {
    /// Stands with the base; middle of its weight at this place from the fixed pivots, m.
    Base(f64),
    /// Moves with the deck; middle of its weight at this place from the upper fixed pivots, m.
    Deck(f64),
    /// Rolls with the wheel axle on the base rails.
    BaseCarriage,
    /// Rolls with the wheel axle under the deck.
    DeckCarriage,
    /// Spread evenly along an arm.
    Arm(ArmName),
    /// Sits on an arm at a part of its length from the lower pin.
    OnArm(ArmName, f64),
    /// Kept beside the table: needed to build or to mind it, but no weight on it.
    Aside,
}

/// What a piece is cut from or bought as. It says what the three sizes of a part mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Form {
    /// Cut from the sheet: length, width, thickness of all layers.
    Sheet,
    /// Sawn from a squared batten: length, width, thickness.
    Batten,
    /// Flat steel cut to length: length, width, thickness.
    FlatBar,
    /// Flat aluminium cut to length: length, width, thickness.
    LightBar,
    /// Round steel cut to length: length, diameter, diameter.
    RoundBar,
    /// Square steel tube cut to length: length, side, wall.
    SquareTube,
    /// Bronze tube cut to length: length, outside, bore.
    BronzeTube,
    /// Threaded bar cut to length: length, outside diameter, lead.
    ThreadedBar,
    /// Hexagon bolt: length under the head, diameter, grip it holds together.
    Bolt,
    /// Self-locking nut: height, diameter of its thread, width across its flats.
    LockNut,
    /// Washer or spacing disc: thickness, outside, bore.
    Washer,
    /// Wood screw: length, diameter, length in the second piece.
    WoodScrew,
    /// Ball or thrust bearing: width, outside, bore.
    Bearing,
    /// Bought as it is: its three largest sizes.
    Bought,
}

impl Form {
    /// What a part of the form is cut from or bought as.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sheet => "sheet",
            Self::Batten => "batten",
            Self::FlatBar => "flat steel",
            Self::LightBar => "flat aluminium",
            Self::RoundBar => "round steel",
            Self::SquareTube => "square tube",
            Self::BronzeTube => "bronze tube",
            Self::ThreadedBar => "threaded bar",
            Self::Bolt => "bolt",
            Self::LockNut => "locking nut",
            Self::Washer => "washer",
            Self::WoodScrew => "wood screw",
            Self::Bearing => "bearing",
            Self::Bought => "bought",
        }
    }
}

/// How the face's grain must lie in a piece of sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Grain {
    /// Along the length.
    Along,
    /// Either way.
    Free,
}

/// One kind of piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The name it has in drawing and lists.
    pub name: &'static str,
    /// Its number in every list and drawing, from 1; pieces that are made alike share it.
    pub number: u32,
    /// What it moves with.
    pub rides: Rides,
    /// What its other end moves with, where it hangs between two; half of its weight is there.
    pub other_end: Option<Rides>,
    /// How many of it.
    pub count: u32,
    /// What it is cut from or bought as.
    pub form: Form,
    /// Three sizes: see [`Form`].
    pub size: [Length; 3],
    /// Layers of sheet glued into one piece; 1 for everything else.
    pub layers: u32,
    /// Radii of the corners at the datum end and at the other end; zero where they are square.
    pub corners: [Length; 2],
    /// How the grain must lie.
    pub grain: Grain,
    /// How it is fixed to its neighbours.
    pub joined: &'static str,
    /// Its holes, from the datum end and edge.
    pub holes: Vec<Hole>,
    /// Recesses to be cut into it.
    pub housings: Vec<Housing>,
    /// Where it sits in what it rides on, for every piece on the right half of the table or across its middle; pieces whose place does not
    /// matter to their neighbours have none.
    pub places: Vec<Block>,
    /// What it touches besides the joints it has holes for.
    pub contacts: Vec<Contact>,
    /// Mass of one piece, kg; of a piece of sheet less its holes and recesses.
    pub mass: f64,
}

impl Part {
    /// One piece of a kind, from one layer, its grain free. Sizes and mass below nothing, as inputs that do not go together give, are nothing.
    pub(super) fn new(name: &'static str, rides: Rides, form: Form, size: [Length; 3], mass: f64) -> Self {
        let size = size.map(|side| side.max(Length::ZERO));
        let mass = mass.max(0.0);
        Self {
            name,
            number: 0,
            rides,
            other_end: None,
            count: 1,
            form,
            size,
            layers: 1,
            corners: [Length::ZERO; 2],
            grain: Grain::Free,
            joined: "",
            holes: Vec::new(),
            housings: Vec::new(),
            places: Vec::new(),
            contacts: Vec::new(),
            mass,
        }
    }

    /// Hung between what it rides on and this.
    pub(super) fn and_on(mut self, other: Rides) -> Self {
        self.other_end = Some(other);
        self
    }

    pub(super) fn times(mut self, count: u32) -> Self {
        self.count = count;
        self
    }

    /// Glued from so many layers of the sheet.
    pub(super) fn glued(mut self, layers: u32) -> Self {
        self.layers = layers;
        self
    }

    pub(super) fn joined(mut self, how: &'static str) -> Self {
        self.joined = how;
        self
    }

    pub(super) fn along_grain(mut self) -> Self {
        self.grain = Grain::Along;
        self
    }

    pub(super) fn rounded(mut self, corners: [Length; 2]) -> Self {
        self.corners = corners;
        self
    }

    pub(super) fn drilled(mut self, holes: Vec<Hole>) -> Self {
        self.holes = holes;
        self
    }

    pub(super) fn housed(mut self, housings: Vec<Housing>) -> Self {
        self.housings = housings;
        self
    }

    pub(super) fn at(mut self, places: Vec<Block>) -> Self {
        self.places = places;
        self
    }

    pub(super) fn touching(mut self, contact: Contact) -> Self {
        self.contacts.push(contact);
        self
    }

    /// Takes holes and recesses off the mass of a piece of a density; never below nothing.
    pub(super) fn hollowed(mut self, density: Density) -> Self {
        let thick = self.size[2];
        let bored =
            self.holes.iter().map(|hole| Section::RoundBar { diameter: hole.diameter }.area() * thick.to_m());
        let cut = self.housings.iter().map(|cut| cut.length.to_m() * cut.width.to_m() * cut.depth.to_m());
        let volume: f64 = bored.chain(cut).sum();
        self.mass = (self.mass - density.to_kg_m3() * volume).max(0.0);
        self
    }

    /// Its name with what tells it from others of that name: the letter and stage of an arm.
    #[must_use]
    pub fn title(&self) -> String {
        match self.rides {
            Rides::Arm(arm) if self.form == Form::Sheet => format!("{}{}", self.name, arm.stage),
            _ => self.name.to_owned(),
        }
    }

    /// Mass of all pieces of the kind, kg.
    #[must_use]
    pub fn total(&self) -> f64 {
        f64::from(self.count) * self.mass
    }

    /// Thickness of one layer.
    #[must_use]
    pub fn layer(&self) -> Length {
        Length::from_steps(self.size[2].steps() / i64::from(self.layers.max(1)))
    }

    /// What carries all pieces of the kind, each with its share of their mass, kg.
    pub fn loads(&self) -> impl Iterator<Item = (Rides, f64)> + '_ {
        let each = if self.other_end.is_some() { self.total() / 2.0 } else { self.total() };
        core::iter::once(self.rides).chain(self.other_end).map(move |rides| (rides, each))
    }

    /// Sheet area all pieces of the kind take, every layer counted, without kerf, m2; zero for what is not cut from it.
    #[must_use]
    pub fn sheet_area(&self) -> f64 {
        if self.form == Form::Sheet {
            f64::from(self.count) * f64::from(self.layers) * self.size[0].to_m() * self.size[1].to_m()
        } else {
            0.0
        }
    }

    /// Whether a part is made like this one, wherever it sits.
    #[must_use]
    pub fn alike(&self, other: &Self) -> bool {
        self.name == other.name
            && self.form == other.form
            && self.size == other.size
            && self.layers == other.layers
            && self.corners == other.corners
            && self.holes.len() == other.holes.len()
            && self.holes.iter().zip(&other.holes).all(|(one, two)| one.alike(two))
            && self.housings == other.housings
    }

    /// The joints it is part of.
    pub(super) fn joints(&self) -> impl Iterator<Item = Joint> + '_ {
        let touched = self.contacts.iter().filter_map(|contact| match contact {
            Contact::Pivot(joint) => Some(*joint),
            _ => None,
        });
        self.holes.iter().filter_map(|hole| hole.joint).chain(touched)
    }
}
