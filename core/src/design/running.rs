//! Wheels, pins and casters.
use super::field::{inputs, mm, ratio};
use crate::quantity::{Force, Length, Ratio, Stiffness};

inputs! {
    /// Wheels, pins and casters.
    running: Running {
        /// Diameter of the pivot bolts.
        pin: Length = mm(16.0), mm(3.0) => mm(60.0), "pd", "Pivot bolts";
        /// Whether the fixed pivots, below and above, are held by a cheek on either side of the arm, so that the bolt is sheared in two places and cannot tilt.
        forks: bool = 0, 0 => 1, "pk", "Cheeks on both sides";
        /// Outside diameter of the bushings in the arms: the hole to drill. As wide as the bolt where there is none.
        bush: Length = mm(22.0), mm(3.0) => mm(100.0), "bo", "Bushings, outside";
        /// Play of the bolt in its bushing, on the diameter.
        clearance: Length = mm(0.2), mm(0.0) => mm(5.0), "pc", "Hole clearance";
        /// Friction of the bolts in their bushings, and of the arms on their axles.
        pin_friction: Ratio = ratio(0.15), ratio(0.0) => ratio(0.8), "mp", "Pivot friction";
        /// Diameter of the axles on which arms and wheels turn.
        axle: Length = mm(20.0), mm(4.0) => mm(80.0), "xd", "Wheel axles";
        /// Play of the arms on the axles, on the diameter.
        axle_clearance: Length = mm(0.3), mm(0.0) => mm(5.0), "xc", "Axle clearance";
        /// Outside diameter of the wheels.
        wheel: Length = mm(42.0), mm(8.0) => mm(300.0), "wd", "Wheels";
        /// Width of a wheel.
        wheel_width: Length = mm(12.0), mm(3.0) => mm(100.0), "wt", "Wheel width";
        /// From the middle of the table to the middle of a wheel, across.
        wheel_place: Length = mm(248.0), mm(20.0) => mm(1500.0), "wz", "Wheels off the middle";
        /// Force to roll a wheel as a part of the force on it.
        rolling: Ratio = ratio(0.025), ratio(0.0) => ratio(0.5), "rr", "Rolling resistance";
        /// Slack between the wheel and the rail that holds it down.
        rail_gap: Length = mm(1.0), mm(0.0) => mm(20.0), "rg", "Slack under capture";
        /// Give of one wheel and its strip under force. Assumed: about 10 kN/mm for a ball bearing on steel strip.
        wheel_stiffness: Stiffness = 10_000, 50 => 1_000_000, "wk", "Wheel stiffness";
        /// Left pair of casters, from the fixed pivots.
        caster_left: Length = mm(-115.0), mm(-3000.0) => mm(5000.0), "cx", "Left casters at";
        /// Right pair of casters, from the fixed pivots.
        caster_right: Length = mm(580.0), mm(-3000.0) => mm(5000.0), "cy", "Right casters at";
        /// Height of a caster from the floor to its plate.
        caster_height: Length = mm(75.0), mm(15.0) => mm(500.0), "ch", "Caster height";
        /// Diameter of a caster's wheel.
        caster_wheel: Length = mm(50.0), mm(10.0) => mm(400.0), "cq", "Caster wheel";
        /// From the middle of the table to a caster's plate, across.
        caster_across: Length = mm(235.0), mm(10.0) => mm(2500.0), "cz", "Casters off the middle";
        /// How far a swivel caster's wheel stands beside the middle of its plate; 0 for casters that do not swivel.
        caster_trail: Length = mm(24.0), mm(0.0) => mm(200.0), "ct", "Caster trail";
        /// What one caster carries. Makers differ: 600 N is usual for a 50 mm polyurethane wheel with a brake (from memory).
        caster_rating: Force = 600_000, 10_000 => 100_000_000, "ca", "Caster, rating";
        /// Give of one caster under force. Assumed: 600 N/mm for a 50 mm polyurethane wheel.
        caster_stiffness: Stiffness = 600, 10 => 100_000, "ck", "Caster stiffness";
    }
}
