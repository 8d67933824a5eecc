//! What the materials and bought parts stand, and how far from it one stays.
use super::choice::{DowelRule, WoodSort};
use super::field::{inputs, mm, ratio};
use crate::quantity::{Count, Density, Force, Length, Ratio, Stress};

inputs! {
    /// What the materials and bought parts stand, and how far from it one stays.
    strength: Strength {
        /// The sort of wood the arms and frames are made of: decides how a pin presses into it.
        sort: WoodSort = 0, 0 => 2, "tq", "Sort of wood";
        /// Bending strength of the stock on edge. Birch plywood: 35 MPa is typical and weak; sheets differ, check yours.
        bending: Stress = 35_000, 1_000 => 300_000, "tb", "Bending strength";
        /// Shear strength of the stock through its thickness, or along the grain. Sheets differ, check yours.
        shear: Stress = 7_000, 200 => 60_000, "ts", "Shear strength";
        /// Strength of the stock pressed across the grain or on its face and edge, as under a washer or a tube's end.
        crushing: Stress = 5_000, 200 => 100_000, "tc", "Bearing strength";
        /// Density that 95 of 100 pieces exceed: what the wood around a pin is reckoned with.
        density_low: Density = 6_300, 1_000 => 90_000, "td", "Density, low end";
        /// What is left of the strength under lasting load and in damp air (k_mod of EN 1995-1-1): 0.8 for months in a heated room,
        /// 0.7 for short loads out of doors (from memory).
        duration: Ratio = ratio(0.8), ratio(0.1) => ratio(1.1), "tk", "Lasting load, damp";
        /// By how much the strength of wood is divided (gamma_M of EN 1995-1-1: 1.3 for solid wood and joints).
        wood_safety: Ratio = ratio(1.3), ratio(1.0) => ratio(6.0), "tg", "Wood, divided by";
        /// By which rule a pin holds in wood: EN 1995-1-1, or the yield limits of the NDS for wood construction.
        rule: DowelRule = 0, 0 => 1, "tr", "Pins in wood by";
        /// Tensile strength of the pivot bolts: 800 MPa for class 8.8, 120 ksi for SAE grade 5.
        bolt_tensile: Stress = 800_000, 100_000 => 2_000_000, "tu", "Bolts, tensile";
        /// Yield strength of the pivot bolts: 640 MPa for class 8.8, 92 ksi for SAE grade 5.
        bolt_yield: Stress = 640_000, 50_000 => 2_000_000, "ty", "Bolts, yield";
        /// Pressure a bushing stands between bolt and bore: 25 MPa for bronze that turns slowly (common practice).
        bush_pressure: Stress = 25_000, 500 => 300_000, "tp", "Bushing, pressure";
        /// Yield strength of cross-bars, bearing tubes and axles: 235 MPa for structural steel.
        steel_yield: Stress = 235_000, 50_000 => 2_000_000, "te", "Bars, yield";
        /// By how much the yield strength of bolts, bars and axles is divided: 1.67 as in bending by AISC 360 (from memory).
        steel_safety: Ratio = ratio(1.67), ratio(1.0) => ratio(10.0), "tz", "Steel, divided by";
        /// Yield strength of the screw: 340 MPa for cold drawn steel, 250 MPa for threaded rod of unknown make.
        screw_yield: Stress = 340_000, 50_000 => 2_000_000, "tj", "Screw, yield";
        /// By how much the yield strength of the screw is divided: 2, because the deck hangs on it (common practice).
        screw_safety: Ratio = ratio(2.0), ratio(1.0) => ratio(10.0), "th", "Screw, divided by";
        /// Length over which the screw buckles, as a part of its free length: 1 with a bearing that lines it up at both ends, up to 2
        /// with a plain nut at one end and one bearing at the other.
        screw_ends: Ratio = ratio(1.0), ratio(0.5) => ratio(2.5), "ti", "Screw, end factor";
        /// How many times the greatest push a slender part must stand before it buckles: 3 (common practice).
        buckling_safety: Ratio = ratio(3.0), ratio(1.0) => ratio(10.0), "tn", "Buckling, times";
        /// Pressure the nut's thread stands while it turns: 15 MPa for bronze on steel by hand (common practice), 5 MPa for plastic.
        thread_pressure: Stress = 15_000, 500 => 200_000, "tt", "Nut, pressure";
        /// Yield strength of the nut, for the shear of its threads: 120 MPa for bearing bronze (from memory).
        nut_yield: Stress = 120_000, 5_000 => 1_000_000, "tv", "Nut, yield";
        /// Diameter of the washer or collar that presses the thrust bearing on wood; 0 where a tube carries it.
        washer: Length = 0, 0 => mm(400.0), "to", "Washer on wood";
        /// What the thrust bearing carries at rest (its static rating, C0). Makers differ: 26 kN for size 51104 is from memory.
        thrust_rating: Force = 26_000_000, 100_000 => 1_000_000_000, "tx", "Thrust bearing, rating";
        /// What one wheel carries at rest. Makers differ: 4.6 kN for the ball bearing 6004 is from memory.
        wheel_rating: Force = 4_600_000, 50_000 => 200_000_000, "tw", "Wheel, rating";
        /// How little deck and rails shall give between their supports: span divided by this. 250 is usual for floors (common practice).
        stiffness: Count = 250, 20 => 5_000, "tf", "Give, span over";
        /// A sideways or endways push at the deck that must not tip the table: somebody leaning on it (common practice, no source).
        lean: Force = 150_000, 0 => 5_000_000, "tl", "Push to stand";
    }
}
