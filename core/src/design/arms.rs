//! Stock, width, holes and bracing of the arms.
use super::Design;
use super::field::{inputs, mm, ratio};
use crate::quantity::{Count, Density, Length, Ratio, Stress};

const fn braced(design: &Design) -> bool {
    design.arms.boards_a || design.arms.boards_b
}

const fn strapped(design: &Design) -> bool {
    design.arms.straps_a || design.arms.straps_b
}

inputs! {
    /// Stock, width, holes and bracing of the arms. Frames and deck are cut from the same stock.
    arms: Arms {
        /// Thickness of one layer as measured, not as named.
        thickness: Length = mm(18.0), mm(3.0) => mm(100.0), "at", "Thickness, measured";
        /// Layers glued to make one arm.
        layers: Count = 2, 1 => 4, "ay", "Layers";
        /// Width of an arm.
        width: Length = mm(75.0), mm(15.0) => mm(400.0), "aw", "Width";
        /// From the end pin to the end of the arm.
        end: Length = mm(45.0), mm(8.0) => mm(400.0), "ae", "End past pin";
        /// From the side pivot to the upper end of the arms below the top stage: the end the pin pulls towards.
        long_end: Length = mm(112.0), mm(8.0) => mm(400.0), "ax", "End past side pivot", when |d| d.lift.stages.get() > 1;
        /// Thickness of the washers and discs between the two arms of a pair.
        spacer: Length = mm(4.0), mm(0.0) => mm(60.0), "sg", "Between the arms";
        /// Least gap between arms that lie parallel when the table is folded.
        gap: Length = mm(3.0), mm(0.0) => mm(60.0), "ng", "Gap when folded", when |d| d.lift.stages.get() > 1;
        /// Stiffness of the stock in bending on edge (E).
        modulus: Stress = 9_000_000, 500_000 => 250_000_000, "am", "Stiffness E";
        /// Shear stiffness of the stock on edge (G).
        shear_modulus: Stress = 620_000, 50_000 => 100_000_000, "ag", "Shear stiffness G";
        /// Weight of the stock for its volume.
        density: Density = 6_800, 1_000 => 90_000, "ad", "Density";
        /// Boards glued across between the two arms A of every stage, at a quarter and three quarters.
        boards_a: bool = 1, 0 => 1, "ba", "Cross boards on A";
        /// Boards glued across between the two arms B of every stage.
        boards_b: bool = 1, 0 => 1, "bb", "Cross boards on B";
        /// Width of a cross board along the arm.
        board_width: Length = mm(70.0), mm(10.0) => mm(400.0), "bw", "Board width", when braced;
        /// Thickness of a cross board.
        board_thickness: Length = mm(18.0), mm(3.0) => mm(80.0), "bt", "Board thickness", when braced;
        /// Where the two boards of an arm sit, as a part of its length from either end pin.
        board_place: Ratio = ratio(0.25), ratio(0.05) => ratio(0.45), "bp", "Boards at", when braced;
        /// Two crossed flat steel straps between the arms A of every stage.
        straps_a: bool = 1, 0 => 1, "sa", "X straps on A";
        /// Two crossed flat steel straps between the arms B of every stage.
        straps_b: bool = 0, 0 => 1, "sb", "X straps on B";
        /// Width of a strap.
        strap_width: Length = mm(20.0), mm(5.0) => mm(100.0), "sw", "Strap width", when strapped;
        /// Thickness of a strap.
        strap_thickness: Length = mm(3.0), mm(0.5) => mm(20.0), "sx", "Strap thickness", when strapped;
    }
}
