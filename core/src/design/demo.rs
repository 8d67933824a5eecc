//! The two demo designs, invented for this program and worked out to the last bolt.
use super::{
    Arms, BearingEnd, Design, Drive, DriveKind, Frames, Lift, Load, Running, Shop, Strength, Sway, WoodSort,
};
use crate::quantity::{Angle, Count, Density, Force, Length, Mass, Pace, Ratio, Stiffness, Stress};

/// A design to start from. Links name it by a letter and then say only what differs, so neither may ever change.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Demo {
    /// A community print workshop's paper-stack lift: metric, two stages, screw in the base.
    PaperLift,
    /// A plant nursery's potting bench: inches, one stage, screw under the deck.
    PottingBench,
}

impl Demo {
    /// Both, the one that opens first in front.
    pub const ALL: [Self; 2] = [Self::PaperLift, Self::PottingBench];

    /// The letter that stands for it in links, for ever.
    #[must_use]
    pub const fn letter(self) -> char {
        match self {
            Self::PaperLift => 'a',
            Self::PottingBench => 'b',
        }
    }

    /// The design itself.
    #[must_use]
    pub fn design(self) -> Design {
        match self {
            Self::PaperLift => paper_lift(),
            Self::PottingBench => potting_bench(),
        }
    }
}

/// The metric demo: 80 kg of paper from 520 to 1160 mm. Its numbers are the defaults of the inputs.
#[must_use]
pub fn paper_lift() -> Design {
    Design {
        name: "Paper-stack lift".into(),
        lift: Lift::default(),
        arms: Arms::default(),
        frames: Frames::default(),
        drive: Drive::default(),
        running: Running::default(),
        sway: Sway::default(),
        load: Load::default(),
        strength: Strength::default(),
        shop: Shop::default(),
    }
}

/// The inch demo: 110 lb of soil from 25 to 40 in.
#[must_use]
pub fn potting_bench() -> Design {
    let inch = Length::inch;
    let ply = inch(23.0 / 32.0);
    Design {
        name: "Potting bench".into(),
        lift: Lift {
            stages: Count::of(1),
            arm_length: inch(32.0),
            centre: Ratio::of(0.5),
            lowest: inch(25.0),
            highest: inch(40.0),
            pin_line: inch(8.0),
            deck_stack: inch(3.0 + 31.0 / 32.0),
            base_axle: Length::ZERO,
            deck_axle: Length::ZERO,
        },
        arms: Arms {
            thickness: ply,
            layers: Count::of(2),
            width: inch(3.0),
            end: inch(2.0),
            long_end: inch(2.0),
            spacer: inch(0.125),
            gap: inch(0.125),
            modulus: Stress::gpa(7.5),
            shear_modulus: Stress::gpa(0.5),
            density: Density::kg_m3(560.0),
            boards_a: true,
            boards_b: true,
            board_width: inch(4.0),
            board_thickness: ply,
            board_place: Ratio::of(0.25),
            straps_a: false,
            straps_b: false,
            strap_width: inch(0.75),
            strap_thickness: inch(0.125),
        },
        frames: Frames {
            spread: inch(19.5),
            deck_length: inch(40.0),
            deck_width: inch(24.0),
            deck_thickness: ply,
            wear: Length::ZERO,
            deck_left: inch(-7.0),
            deck_rail_left: inch(-3.5),
            deck_rail_length: inch(34.0),
            deck_rail_depth: inch(2.25),
            base_length: inch(38.0),
            base_left: inch(-6.0),
            beam_depth: inch(3.0),
            layers: Count::of(2),
            plank_width: inch(4.0),
            strip_thickness: inch(3.0 / 16.0),
            strip_width: inch(1.0),
        },
        drive: Drive {
            kind: DriveKind::TopCarriage,
            bearing_end: BearingEnd::Far,
            bearing_place: inch(32.0),
            major: inch(0.75),
            mean: inch(0.666_67),
            root: inch(0.563_33),
            pitch: inch(1.0 / 6.0),
            lead: inch(1.0 / 6.0),
            flank: Angle::degrees(14.5),
            screw_length: inch(22.0),
            thread_friction: Ratio::of(0.15),
            nut_length: inch(1.0),
            backlash: Length::mm(0.3),
            collar_friction: Ratio::of(0.12),
            collar: inch(1.0),
            cross_bar: inch(1.5),
            cross_wall: inch(0.12),
            anchor_bar: inch(1.5),
            anchor_wall: inch(0.12),
            anchor_span: inch(22.625),
            seat_depth: inch(6.0),
            crank: inch(5.0),
            pace: Pace::per_minute(30.0),
            crank_limit: Force::n(150.0),
            ..Drive::default()
        },
        running: Running {
            pin: inch(0.5),
            bush: inch(0.625),
            clearance: Length::mm(0.2),
            pin_friction: Ratio::of(0.18),
            axle: inch(0.75),
            axle_clearance: Length::mm(0.3),
            wheel: inch(1.625),
            wheel_width: inch(0.4375),
            wheel_place: inch(10.8125),
            rolling: Ratio::of(0.03),
            rail_gap: Length::mm(1.5),
            wheel_stiffness: Stiffness::n_per_mm(8000.0),
            caster_left: inch(-4.0),
            caster_right: inch(30.0),
            caster_height: inch(4.0),
            caster_wheel: inch(3.0),
            caster_across: inch(10.0),
            caster_trail: inch(1.0),
            caster_rating: Force::lbf(150.0),
            forks: false,
            caster_stiffness: Stiffness::n_per_mm(400.0),
        },
        sway: Sway {
            guide_stiffness: Stiffness::n_per_mm(300.0),
            board_fit: Ratio::of(0.25),
            ..Sway::default()
        },
        load: Load {
            mass: Mass::lb(110.0),
            centre: inch(9.0),
            length: inch(24.0),
            width: inch(18.0),
            height: inch(12.0),
            centre_height: Ratio::of(0.5),
            across: Length::ZERO,
            push: Force::ZERO,
            push_height: Length::ZERO,
        },
        strength: Strength {
            sort: WoodSort::Plywood,
            bending: Stress::mpa(33.72),
            shear: Stress::mpa(3.5),
            crushing: Stress::mpa(3.0),
            density_low: Density::kg_m3(410.0),
            duration: Ratio::of(0.7),
            bolt_tensile: Stress::psi(120_000.0),
            bolt_yield: Stress::psi(92_000.0),
            steel_yield: Stress::mpa(250.0),
            screw_yield: Stress::mpa(250.0),
            screw_ends: Ratio::of(1.5),
            thrust_rating: Force::kn(5.0),
            wheel_rating: Force::kn(2.0),
            ..Strength::default()
        },
        shop: Shop {
            sheet_length: inch(96.0),
            sheet_width: inch(48.0),
            kerf: inch(0.125),
            trim: inch(0.25),
            drilling: inch(0.015_625),
            level: inch(0.1875),
            ..Shop::default()
        },
    }
}
