//! One kind of piece: what it is made of, how big, how many, how heavy and where it rides.
use crate::quantity::Length;

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
}

/// What a piece is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Material {
    /// Cut from the sheet of the design; size is length, width and thickness.
    Sheet,
    /// Steel; size is length, width or diameter, and thickness or diameter.
    Steel,
    /// Bronze.
    Bronze,
    /// Bought as it is (a caster, a bearing).
    Bought,
}

/// One kind of piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The name it has in drawing and lists.
    pub name: &'static str,
    /// What it moves with.
    pub rides: Rides,
    /// How many of it.
    pub count: u32,
    /// What it is made of.
    pub material: Material,
    /// Length, width, thickness.
    pub size: [Length; 3],
    /// Layers of sheet glued into one piece; 1 for everything else.
    pub layers: u32,
    /// Mass of one piece, kg.
    pub mass: f64,
}

impl Part {
    /// Mass of all pieces of the kind, kg.
    #[must_use]
    pub fn total(&self) -> f64 {
        f64::from(self.count) * self.mass
    }

    /// Sheet area all pieces of the kind take, every layer counted, without kerf, m2; zero for what is not cut from it.
    #[must_use]
    pub fn sheet_area(&self) -> f64 {
        if self.material == Material::Sheet {
            f64::from(self.count) * f64::from(self.layers) * self.size[0].to_m() * self.size[1].to_m()
        } else {
            0.0
        }
    }
}
