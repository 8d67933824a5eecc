//! Screw, nut, bearing and crank.
use super::Design;
use super::choice::{BearingEnd, DriveKind, StrutEnd};
use super::field::{inputs, mm, ratio};
use crate::quantity::{Angle, Count, Force, Length, Pace, Ratio};

const fn carriage(design: &Design) -> bool {
    matches!(design.drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage)
}

const fn pivots(design: &Design) -> bool {
    matches!(design.drive.kind, DriveKind::SidePivots)
}

const fn strut(design: &Design) -> bool {
    matches!(design.drive.kind, DriveKind::Strut)
}

/// Whether an end of the screw is held by a tube across a frame.
const fn on_frame(design: &Design) -> bool {
    carriage(design) || foot_on_frame(design) || head_on_frame(design)
}

const fn foot_on_arm(design: &Design) -> bool {
    strut(design) && design.drive.foot.stage().is_some()
}

const fn foot_on_frame(design: &Design) -> bool {
    strut(design) && design.drive.foot.stage().is_none()
}

const fn head_on_arm(design: &Design) -> bool {
    strut(design) && design.drive.head.stage().is_some()
}

const fn head_on_frame(design: &Design) -> bool {
    strut(design) && design.drive.head.stage().is_none()
}

inputs! {
    /// Screw, nut, bearing and crank.
    drive: Drive {
        /// What the screw moves.
        kind: DriveKind = 0, 0 => 3, "dr", "Screw moves";
        /// Where the thrust bearing holds the screw.
        bearing_end: BearingEnd = 0, 0 => 1, "de", "Bearing at", when carriage;
        /// Where the thrust bearing sits, from the fixed pivots.
        bearing_place: Length = mm(-100.0), mm(-2000.0) => mm(5000.0), "da", "Bearing from pivots", when carriage;
        /// Above which stage the screw joins the two side pivots.
        level: Count = 1, 1 => 3, "dv", "Above stage", when pivots;
        /// What the strut's lower end stands on.
        foot: StrutEnd = 0, 0 => 9, "pa", "Strut from", when strut;
        /// The lower end's place along the table, from the fixed pivots.
        foot_x: Length = mm(600.0), mm(-3000.0) => mm(5000.0), "px", "… along", when foot_on_frame;
        /// The lower end's height above the fixed pivots.
        foot_y: Length = mm(0.0), mm(-1000.0) => mm(1000.0), "py", "… above pins", when foot_on_frame;
        /// The lower end's place along the arm, from the arm's lower pin.
        foot_part: Ratio = ratio(0.25), ratio(0.0) => ratio(1.0), "pf", "… along the arm", when foot_on_arm;
        /// The lower end's distance from the arm's axis, to the upper left of it.
        foot_off: Length = mm(0.0), mm(-500.0) => mm(500.0), "po", "… off its axis", when foot_on_arm;
        /// What the strut's upper end carries.
        head: StrutEnd = 2, 0 => 9, "qa", "Strut to", when strut;
        /// The upper end's place along the table, from the fixed pivots of its frame.
        head_x: Length = mm(300.0), mm(-3000.0) => mm(5000.0), "qx", "… along", when head_on_frame;
        /// The upper end's height above the fixed pivots of its frame.
        head_y: Length = mm(0.0), mm(-1000.0) => mm(1000.0), "qy", "… above pins", when head_on_frame;
        /// The upper end's place along the arm, from the arm's lower pin.
        head_part: Ratio = ratio(0.7), ratio(0.0) => ratio(1.0), "qf", "… along the arm", when head_on_arm;
        /// The upper end's distance from the arm's axis, to the upper left of it.
        head_off: Length = mm(0.0), mm(-500.0) => mm(500.0), "qo", "… off its axis", when head_on_arm;
        /// Outside diameter of the thread.
        major: Length = mm(20.0), mm(3.0) => mm(120.0), "sj", "Thread, outside";
        /// Mean (pitch) diameter of the thread.
        mean: Length = mm(18.0), mm(2.0) => mm(120.0), "sm", "Thread, mean";
        /// Root diameter of the thread.
        root: Length = mm(15.5), mm(1.0) => mm(120.0), "sr", "Thread, root";
        /// Distance from one thread ridge to the next.
        pitch: Length = mm(4.0), mm(0.2) => mm(30.0), "sp", "Pitch";
        /// How far the nut travels in one turn: the pitch times the number of starts.
        lead: Length = mm(4.0), mm(0.2) => mm(100.0), "sl", "Lead, one turn";
        /// Half the angle between two flanks: 15° trapezoidal, 14.5° Acme, 30° metric or UNC.
        flank: Angle = 1500, 0 => 4500, "sf", "Flank half angle";
        /// Length of the screw.
        screw_length: Length = mm(760.0), mm(50.0) => mm(5000.0), "sn", "Screw length";
        /// Friction of screw in nut.
        thread_friction: Ratio = ratio(0.13), ratio(0.0) => ratio(0.6), "mt", "Thread friction";
        /// Length of the nut.
        nut_length: Length = mm(30.0), mm(3.0) => mm(300.0), "nl", "Nut length";
        /// Slack between nut and screw, along the screw.
        backlash: Length = mm(0.2), mm(0.0) => mm(5.0), "nb", "Nut backlash";
        /// Friction of the thrust bearing.
        collar_friction: Ratio = ratio(0.02), ratio(0.0) => ratio(0.6), "mc", "Bearing friction";
        /// Mean diameter of the thrust bearing.
        collar: Length = mm(27.5), mm(0.0) => mm(300.0), "cd", "Bearing, mean dia.";
        /// Side of the square tube across the table, between the arms, that the nut pushes at its middle.
        cross_bar: Length = mm(50.0), mm(8.0) => mm(200.0), "cb", "Cross-bar, side";
        /// Wall of that tube; half its side or more is a solid bar.
        cross_wall: Length = mm(4.0), mm(0.5) => mm(100.0), "cw", "Cross-bar, wall";
        /// Side of the square tube that holds the thrust bearing.
        anchor_bar: Length = mm(60.0), mm(8.0) => mm(200.0), "nk", "Bearing tube, side", when on_frame;
        /// Wall of the bearing tube.
        anchor_wall: Length = mm(4.0), mm(0.5) => mm(100.0), "nw", "Bearing tube, wall", when on_frame;
        /// Free length of the bearing tube between the two seats that hold it.
        anchor_span: Length = mm(520.0), mm(20.0) => mm(3000.0), "ns", "Bearing tube, span", when on_frame;
        /// Depth of wood behind each seat of the bearing tube, along the screw.
        seat_depth: Length = mm(130.0), mm(5.0) => mm(1000.0), "sq", "Wood behind seats", when on_frame;
        /// From the axis of the screw to the handle.
        crank: Length = mm(125.0), mm(20.0) => mm(600.0), "cr", "Crank";
        /// Turns of the crank in a minute.
        pace: Pace = 300, 10 => 3000, "cp", "Pace";
        /// The force on the handle that you accept.
        crank_limit: Force = 150_000, 5_000 => 1_000_000, "cl", "Crank, at most";
    }
}
