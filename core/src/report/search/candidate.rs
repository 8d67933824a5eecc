//! From a combination to a whole design: sizes that follow from each other are worked out as a builder would on paper.
//!
//! Heights add up exactly (caster, beam, strip and wheel to the pin line; strip, rail and deck above the upper pins), rails reach past the
//! wheels, the outer arms stand as wide as the deck allows. Whether it all clears and holds is for the analysis.
use super::kit::{set_casters, set_pin, set_screw_parts, up};
use super::space::{Brace, Choice};
use super::targets::{Stance, Targets};
use crate::design::{BearingEnd, Design, DriveKind};
use crate::parts::{arm_thickness, frame_thickness, rail_middle};
use crate::quantity::{Count, Force, Length};

/// An end past its pin, in bolt diameters, and the least wood beside the pin's line, mm: as both demos have it.
const END: f64 = 2.8;
const END_WOOD: Length = Length::mm(7.0);

/// The end past a side pivot, which the pin pulls towards: 7 d and 80 mm (EN 1995-1-1, table 8.4, loaded end).
const LONG_END: i64 = 7;
const LONG_END_LEAST: Length = Length::mm(80.0);

/// Between the sweep of an arm's end and the frame.
const CLEAR: Length = Length::mm(2.0);

/// From a wheel at its farthest to the end of its rail.
const RUN_OUT: Length = Length::mm(8.0);

/// Beams and rails of the template carry this load, kg; a heavier one asks for deeper ones, by the square root.
const TEMPLATE_LOAD: f64 = 100.0;

/// A crank is as long as the floor allows, less this, and at most as long as an arm turns well (common practice, no source).
const OVER_FLOOR: Length = Length::mm(15.0);
const LONGEST_CRANK: Length = Length::mm(150.0);
const CRANK_STEP: Length = Length::mm(5.0);

/// From the outer arm to the wheel: washer and play.
const BESIDE_WHEEL: Length = Length::mm(4.0);

/// Room beside a wheel towards its rail.
const WHEEL_PLAY: Length = Length::mm(0.5);

/// Why a combination makes no table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Misfit {
    /// Frames and deck are thicker than the lowest deck is high, or the arms would have to fold flatter than they can.
    Fold,
    /// The arms are longer than the deck.
    DeckLength,
    /// There is no room between the arms of both sides.
    DeckWidth,
}

/// Places of the wheels, and what they follow from.
struct Geometry {
    /// Carriage at the lowest and the highest deck.
    far: Length,
    near: Length,
    /// What the end of an arm sweeps about its pin.
    sweep: Length,
}

impl Choice {
    /// The design; `targets` say all that is not chosen.
    ///
    /// # Errors
    /// Where the sizes leave no room for it.
    pub fn design(&self, targets: &Targets) -> Result<Design, Misfit> {
        let step = targets.step();
        let mut design = targets.base.clone();
        self.arms(&mut design, step);
        let sweep = stack(&mut design, step);
        self.lift(&mut design, targets)?;
        let geometry = self.geometry(&design, sweep)?;
        across(&mut design, self.deck_width, step)?;
        let (drive, end) = self.way.drive();
        (design.drive.kind, design.drive.bearing_end) = (drive, end);
        crate::design::set_thread(&mut design, self.thread);
        set_screw_parts(&mut design, step);
        along(&mut design, &geometry, targets)?;
        design.load.centre = middle(&design) + targets.off_middle;
        design.load.across = Length::ZERO;
        let crank = targets.of(super::Measure::Crank);
        if crank.stance != Stance::Free {
            design.drive.crank_limit = Force::n(crank.value.clamp(5.0, 1000.0));
        }
        design.rename(&format!(
            "{} {}, {} in the {}",
            self.stages,
            if self.stages == 1 { "stage" } else { "stages" },
            self.thread.name,
            if drive == DriveKind::BaseCarriage { "base" } else { "deck" },
        ));
        Ok(design)
    }

    fn arms(&self, design: &mut Design, step: Length) {
        set_pin(design, self.pin);
        set_casters(design);
        let arms = &mut design.arms;
        (arms.width, arms.layers) = (self.width, Count::of(self.layers));
        let half = Length::from_steps(self.width.steps() / 2);
        arms.end = up(Length::m(END * self.pin.to_m()).max(half + END_WOOD), step);
        arms.long_end =
            if self.stages > 1 { up((self.pin * LONG_END).max(LONG_END_LEAST), step) } else { arms.end };
        let boards = self.brace != Brace::None;
        (arms.boards_a, arms.boards_b) = (boards, boards);
        (arms.straps_a, arms.straps_b) = (self.brace == Brace::Straps, false);
        arms.board_thickness = arms.thickness;
        design.frames.deck_thickness = arms.thickness;
        design.lift.stages = Count::of(self.stages);
    }

    /// Heights, and the arm that stands at the chosen angle at the highest.
    fn lift(&self, design: &mut Design, targets: &Targets) -> Result<(), Misfit> {
        let lift = &mut design.lift;
        (lift.lowest, lift.highest) = (self.lowest, self.highest);
        let rise = (self.highest - lift.pin_line - lift.deck_stack).to_m();
        let fold = (self.lowest - lift.pin_line - lift.deck_stack).to_m();
        if fold <= 0.0 || rise <= fold {
            return Err(Misfit::Fold);
        }
        let sine = libm::sin(self.angle.to_radians());
        lift.arm_length = up(Length::m(rise / (self.stages as f64 * sine)), targets.long_step());
        Ok(())
    }

    /// The wheels' places; arms of neighbouring stages that would meet are told at once.
    fn geometry(&self, design: &Design, sweep: Length) -> Result<Geometry, Misfit> {
        let length = design.lift.arm_length.to_m();
        let stacked = design.lift.pin_line + design.lift.deck_stack;
        let across = |deck: Length| {
            let stage = (deck - stacked).to_m() / self.stages as f64;
            (length * length - stage * stage).max(0.0).sqrt()
        };
        let far = across(self.lowest);
        if self.stages > 1 {
            let stage = (self.lowest - stacked).to_m() / self.stages as f64;
            // Parallel arms lie L sin(theta) cos(theta) apart.
            if stage * far < length * (design.arms.width + design.arms.gap).to_m() {
                return Err(Misfit::Fold);
            }
        }
        Ok(Geometry { far: Length::m(far), near: Length::m(across(self.highest)), sweep })
    }
}

/// The middle of the deck along the table, from the fixed pivots.
fn middle(design: &Design) -> Length {
    design.frames.deck_left + Length::from_steps(design.frames.deck_length.steps() / 2)
}

/// Depth of beams and rails, and the heights that follow; what the ends of the arms sweep.
fn stack(design: &mut Design, step: Length) -> Length {
    let sweep = Length::m(libm::hypot(design.arms.end.to_m(), design.arms.width.to_m() / 2.0)) + CLEAR;
    let heavier = (design.load.mass.to_kg() / TEMPLATE_LOAD).max(1.0).sqrt();
    let (frames, running, lift) = (&mut design.frames, &design.running, &mut design.lift);
    let wheel = Length::from_steps(running.wheel.steps() / 2) + frames.strip_thickness;
    let depth = |depth: Length| up(Length::m(depth.to_m() * heavier).max(sweep - wheel), step);
    frames.beam_depth = depth(frames.beam_depth);
    frames.deck_rail_depth = depth(frames.deck_rail_depth);
    (lift.base_axle, lift.deck_axle) = (Length::ZERO, Length::ZERO);
    lift.pin_line = running.caster_height + frames.beam_depth + wheel;
    lift.deck_stack = frames.wear + frames.deck_thickness + frames.deck_rail_depth + wheel;
    sweep
}

/// Rails under the edges of the deck, wheels inside them, arms inside the wheels.
fn across(design: &mut Design, deck_width: Length, step: Length) -> Result<(), Misfit> {
    let half = |length: Length| Length::from_steps(length.steps() / 2);
    design.frames.deck_width = deck_width;
    let frame = frame_thickness(design);
    let running = &mut design.running;
    running.wheel_place = half(deck_width) - frame - WHEEL_PLAY + half(running.wheel_width);
    running.caster_across = half(deck_width) - Length::m(0.87 * running.caster_wheel.to_m());
    let face = running.wheel_place - half(running.wheel_width) - BESIDE_WHEEL;
    design.frames.spread = (face - half(arm_thickness(design))) * 2;
    let least = (arm_thickness(design) * 2 + design.arms.spacer) * 2 + design.drive.cross_bar;
    if design.frames.spread < least || design.running.caster_across <= Length::ZERO {
        return Err(Misfit::DeckWidth);
    }
    let span = rail_middle(design) * 2;
    design.drive.anchor_span = Length::from_steps(span.steps() / step.steps() * step.steps());
    Ok(())
}

/// Everything along the table: rails, deck, base, casters, the bearing and the screw.
fn along(design: &mut Design, geometry: &Geometry, targets: &Targets) -> Result<(), Misfit> {
    let step = targets.step();
    let half = |length: Length| Length::from_steps(length.steps() / 2);
    let (tube, wheel) = (design.drive.anchor_bar, half(design.running.wheel));
    let out = |length: Length| up(length, step);
    let frames = &mut design.frames;
    let (under_deck, pushed) =
        (design.drive.kind == DriveKind::TopCarriage, design.drive.bearing_end == BearingEnd::Far);

    // Deck rails from behind the fixed pivots to the wheel at its farthest.
    frames.deck_rail_left = -(design.arms.end * 2);
    let rail_end = out(geometry.far + wheel + RUN_OUT);
    frames.deck_rail_length = rail_end - frames.deck_rail_left;

    // The tube of the thrust bearing clears the ends of the arms, and lies between the deck's ends where it hangs from the deck.
    let beside_arms = out(geometry.sweep + half(tube) + CLEAR);
    let left_bearing = -beside_arms;
    let right_bearing = out(geometry.far) + beside_arms;
    let left = (frames.deck_rail_left - Length::mm(30.0)).min(left_bearing - Length::mm(20.0));
    let least_right = if under_deck && pushed { right_bearing + half(tube) + step } else { rail_end };
    let given = targets.deck_length;
    let least = least_right - left;
    frames.deck_length = match given.stance {
        Stance::Limit if given.value < least => return Err(Misfit::DeckLength),
        Stance::Free => out(least),
        Stance::Limit | Stance::Wish => given.value.max(out(least)),
    };
    frames.deck_left = left;
    let right = left + frames.deck_length;

    // The crank turns one and a half tubes outside its bearing, clear of planks and deck.
    let plank = half(frames.plank_width);
    let beside_crank = frames.plank_width - Length::mm(20.0);
    frames.base_left = left_bearing - beside_crank;
    let reach = geometry.far + wheel + Length::mm(98.0);
    let mut base_right = out(reach).max(right + Length::mm(60.0));
    let bearing = match (under_deck, pushed) {
        (_, false) => left_bearing,
        (true, true) => right_bearing.max(right - half(tube) - Length::m(0.25 * tube.to_m())),
        (false, true) => {
            let place = right_bearing.max(base_right - beside_crank);
            base_right = place + beside_crank;
            place
        }
    };
    frames.base_length = base_right - frames.base_left;
    design.running.caster_left = frames.base_left + plank + Length::mm(5.0);
    design.running.caster_right = base_right - plank;
    let drive = &mut design.drive;
    // Handle and knuckles clear the floor, or what one holds on to below the deck.
    let turns_in = if under_deck { LONGEST_CRANK } else { design.lift.pin_line - OVER_FLOOR };
    drive.crank =
        Length::from_steps(turns_in.min(LONGEST_CRANK).steps() / CRANK_STEP.steps() * CRANK_STEP.steps());
    drive.bearing_place = Length::from_steps(bearing.steps() / step.steps() * step.steps());
    let reach = if pushed { drive.bearing_place - geometry.near } else { geometry.far - drive.bearing_place };
    drive.screw_length = up(reach + drive.nut_length + half(drive.cross_bar) + RUN_OUT, targets.long_step());
    Ok(())
}
