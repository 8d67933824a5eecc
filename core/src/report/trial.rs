//! Steps a builder would take to mend something, each as a changed design with the words for it.
use crate::catalogue::fastener::BoltClass;
use crate::catalogue::thread::Thread;
use crate::catalogue::{Row, fastener};
use crate::checks::Lever;
use crate::design::{BearingEnd, Design, DriveKind, bolt_class, set_bolt_class, set_thread, thread};
use crate::parts::{crank_room, plank_end, plate_screws};
use crate::quantity::{Amount, Count, Length, Phrase};

/// How far the bearing of a screw that is made to pull stands behind the fixed pivots.
const BEHIND_PIVOTS: Length = Length::mm(-100.0);

/// By how much casters are moved outwards.
const OUTWARDS: Length = Length::mm(50.0);

/// A change worth trying.
#[derive(Clone, Debug)]
pub(super) struct Trial {
    /// What is changed, as the beginning of a sentence.
    pub words: Phrase,
    /// The design after it.
    pub design: Design,
}

/// A size grown by a factor, to whole steps of so many millimetres above.
fn grown(length: Length, by: f64, step: f64) -> Length {
    Length::mm((length.to_mm() * by / step).ceil() * step)
}

/// `Bushings 28 mm wide` and its like: every step makes something larger, and who takes the figure as it is read takes no less than was tried.
fn sized(before: &str, length: Length, after: &str) -> Phrase {
    Phrase::new(before).with(Amount::AtLeast(length.to_m())).and(after)
}

/// `Two layers instead of one in the arms` and its like.
fn layered(now: i64, place: &str) -> Phrase {
    const NUMBERS: [[&str; 2]; 6] = [
        ["One", "one"],
        ["Two", "two"],
        ["Three", "three"],
        ["Four", "four"],
        ["Five", "five"],
        ["Six", "six"],
    ];
    let words = |count: i64, capital: bool| {
        let known = usize::try_from(count - 1).ok().and_then(|at| NUMBERS.get(at));
        known.map_or_else(|| count.to_string(), |words| words[usize::from(!capital)].to_owned())
    };
    Phrase::new(format!("{} layers instead of {} {place}", words(now + 1, true), words(now, false)))
}

impl Trial {
    /// The step applied to a design; none where it changes nothing that is there.
    pub fn of(design: &Design, lever: Lever) -> Option<Self> {
        let mut changed = design.clone();
        let words = change(&mut changed, lever)?;
        Some(Self { words, design: changed })
    }
}

/// Takes the step and says so; none where it cannot be taken.
fn change(d: &mut Design, lever: Lever) -> Option<Phrase> {
    match lever {
        Lever::ArmLayer | Lever::ArmWidth | Lever::ArmEnds | Lever::Boards => arms(d, lever),
        Lever::Pin | Lever::Bush | Lever::BoltClass | Lever::Axle => pins(d, lever),
        Lever::CrossBar | Lever::BearingTube | Lever::Thread | Lever::Pull | Lever::Nut => drive(d, lever),
        Lever::DeckRails | Lever::BaseBeams | Lever::Deck | Lever::FrameLayer => frames(d, lever),
        Lever::Casters => {
            let running = &mut d.running;
            running.caster_left -= OUTWARDS;
            running.caster_right += OUTWARDS;
            running.caster_across += OUTWARDS;
            Some(under_casters(d, sized("Casters ", OUTWARDS, " farther out on every side")))
        }
        Lever::Load => {
            let middle = (d.running.caster_left.to_m() + d.running.caster_right.to_m()) / 2.0;
            let moved = Length::m(middle) != d.load.centre || d.load.across != Length::ZERO;
            (d.load.centre, d.load.across) = (Length::m(middle), Length::ZERO);
            moved.then(|| Phrase::new("The load in the middle between the casters"))
        }
        Lever::HigherStop => {
            let lift = (d.lift.highest - d.lift.lowest).to_mm();
            d.lift.lowest = Length::mm((d.lift.lowest.to_mm() + 0.1 * lift).ceil());
            Some(sized("A lowest deck of ", d.lift.lowest, ""))
        }
        Lever::LongerCrank => {
            d.drive.crank = grown(d.drive.crank, 1.25, 5.0);
            (d.drive.crank <= crank_room(d)).then(|| sized("A crank of ", d.drive.crank, ""))
        }
    }
}

/// Brings base beams and planks under casters that were moved, where they end too soon, and says so.
fn under_casters(d: &mut Design, words: Phrase) -> Phrase {
    let half = Length::from_steps(d.frames.plank_width.steps() / 2);
    let (left, right) = (d.frames.base_left, d.frames.base_left + d.frames.base_length);
    let (from, to) = (left.min(d.running.caster_left - half), right.max(d.running.caster_right + half));
    (d.frames.base_left, d.frames.base_length) = (from, to - from);
    let outer = d.running.caster_across + plate_screws(d);
    let wider = outer > plank_end(d);
    if wider {
        d.frames.deck_width = grown(outer * 2, 1.0, 5.0);
    }
    let words = if to - from > right - left {
        words.and(", base beams ").with(Amount::AtLeast((to - from).to_m())).and(" long")
    } else {
        words
    };
    if wider {
        words.and(", deck and planks ").with(Amount::AtLeast(d.frames.deck_width.to_m())).and(" wide")
    } else {
        words
    }
}

fn arms(d: &mut Design, lever: Lever) -> Option<Phrase> {
    let arms = &mut d.arms;
    match lever {
        Lever::ArmLayer => {
            let layers = arms.layers.get();
            arms.layers = Count::of(layers + 1);
            Some(layered(layers, "in the arms"))
        }
        Lever::ArmWidth => {
            arms.width = grown(arms.width, 1.2, 5.0);
            Some(sized("Arms ", arms.width, " wide"))
        }
        Lever::ArmEnds => {
            (arms.end, arms.long_end) = (grown(arms.end, 1.5, 5.0), grown(arms.long_end, 1.5, 5.0));
            Some(sized("Ends ", arms.end, " past their pins"))
        }
        _ => {
            let missing = !(arms.boards_a && arms.boards_b);
            (arms.boards_a, arms.boards_b) = (true, true);
            missing.then(|| Phrase::new("Cross boards on all arms"))
        }
    }
}

fn pins(d: &mut Design, lever: Lever) -> Option<Phrase> {
    let running = &mut d.running;
    match lever {
        Lever::Pin => {
            let thicker = grown(running.pin, 1.2, 1.0);
            running.bush += thicker - running.pin;
            running.pin = thicker;
            Some(sized("Bolts ", thicker, " thick"))
        }
        Lever::Bush => {
            running.bush = grown(running.bush, 1.25, 1.0);
            Some(sized("Bushings ", running.bush, " wide"))
        }
        Lever::Axle => {
            running.axle = grown(running.axle, 1.2, 1.0);
            Some(sized("Axles ", running.axle, " thick"))
        }
        _ => {
            let class = next_class(d)?;
            set_bolt_class(d, class);
            Some(Phrase::new(format!("Bolts of class {}", class.name)))
        }
    }
}

/// The next stronger class of the same standard that is made in the bolts' size.
fn next_class(d: &Design) -> Option<&'static BoltClass> {
    let now = bolt_class(d)?;
    fastener::BOLT_CLASSES
        .iter()
        .filter(|class| class.source == now.source && class.covers(d.running.pin))
        .filter(|class| class.yield_strength > now.yield_strength)
        .min_by_key(|class| class.yield_strength)
}

fn drive(d: &mut Design, lever: Lever) -> Option<Phrase> {
    match lever {
        Lever::CrossBar => {
            d.drive.cross_bar = grown(d.drive.cross_bar, 1.2, 5.0);
            Some(sized("A cross-bar ", d.drive.cross_bar, " square"))
        }
        Lever::BearingTube => {
            let held = crate::parts::screw_bars(d).iter().any(|bar| bar.on_frame);
            d.drive.anchor_bar = grown(d.drive.anchor_bar, 1.2, 5.0);
            held.then(|| sized("A bearing tube ", d.drive.anchor_bar, " square"))
        }
        Lever::Thread => {
            let thicker = next_thread(d)?;
            set_thread(d, thicker);
            Some(Phrase::new(format!("A screw {}", thicker.name)))
        }
        Lever::Pull => {
            let rail = matches!(d.drive.kind, DriveKind::BaseCarriage | DriveKind::TopCarriage);
            let pushed = rail && d.drive.bearing_end == BearingEnd::Far;
            (d.drive.bearing_end, d.drive.bearing_place) = (BearingEnd::Fixed, BEHIND_PIVOTS);
            pushed.then(|| {
                Phrase::new("The thrust bearing beside the fixed pivots, so that the screw is pulled")
            })
        }
        _ => {
            d.drive.nut_length = grown(d.drive.nut_length, 1.5, 5.0);
            Some(sized("A nut ", d.drive.nut_length, " long"))
        }
    }
}

/// The next thicker thread of the same series with as many starts.
fn next_thread(d: &Design) -> Option<&'static Thread> {
    let now = thread(d)?;
    Thread::rows()
        .filter(|row| row.series == now.series && row.starts == now.starts && row.major() > now.major())
        .min_by_key(|row| row.major())
}

fn frames(d: &mut Design, lever: Lever) -> Option<Phrase> {
    let frames = &mut d.frames;
    match lever {
        Lever::DeckRails => {
            frames.deck_rail_depth = grown(frames.deck_rail_depth, 1.25, 5.0);
            Some(sized("Deck rails ", frames.deck_rail_depth, " deep"))
        }
        Lever::BaseBeams => {
            frames.beam_depth = grown(frames.beam_depth, 1.25, 5.0);
            Some(sized("Base beams ", frames.beam_depth, " deep"))
        }
        Lever::Deck => {
            frames.deck_thickness = grown(frames.deck_thickness, 1.25, 1.0);
            Some(sized("A deck ", frames.deck_thickness, " thick"))
        }
        _ => {
            let layers = frames.layers.get();
            frames.layers = Count::of(layers + 1);
            Some(layered(layers, "in the frames"))
        }
    }
}
