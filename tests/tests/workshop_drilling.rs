//! Drilling: holes of a joint on one line, and what errors do to the deck, held against a Monte Carlo of the real linkage.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod cutting;

use cutting::Dice;
use glam::DVec2;
use risewright::design::{Demo, Design};
use risewright::mechanics::{Pose, Solver, idealise};
use risewright::parts::{Form, Joint, Part, Purpose, Rides, parts};
use risewright::quantity::{Length, Ratio};
use risewright::workshop::clear::seat;
use risewright::workshop::drilling::{Effect, Method, exactness, order, pilots, tables};

/// Standard deviation of an error of drilling, m: small, so that second-order terms do not count.
const SIGMA: f64 = 1e-5;

/// The scatter of a standard deviation over so many trials is 0.5 %.
const TRIALS: usize = 20_000;

/// The analysis is to first order.
const CLOSE: f64 = 0.05;

fn solver(design: &Design) -> Solver {
    Solver::new(&idealise(design).unwrap()).unwrap()
}

fn designs() -> Vec<Design> {
    let mut off_middle = Demo::PaperLift.design();
    off_middle.lift.centre = Ratio::of(0.48);
    off_middle.lift.lowest = Length::mm(560.0);
    off_middle.lift.highest = Length::mm(1000.0);
    let mut inclined = Demo::PottingBench.design();
    inclined.lift.base_axle = Length::mm(12.0);
    inclined.lift.deck_axle = Length::mm(20.0);
    let mut forked = Demo::PaperLift.design();
    forked.running.forks = true;
    vec![Demo::PaperLift.design(), Demo::PottingBench.design(), off_middle, inclined, forked]
}

fn heights(design: &Design) -> [f64; 3] {
    let (low, high) = (design.lift.lowest.to_m(), design.lift.highest.to_m());
    [low, f64::midpoint(low, high), high]
}

/// A normal number with mean 0 and deviation 1, by Box and Muller.
fn normal(dice: &mut Dice) -> f64 {
    let (one, two) = (dice.unit().max(1e-300), dice.unit());
    (-2.0 * one.ln()).sqrt() * (std::f64::consts::TAU * two).cos()
}

/// The three holes of an arm in its own axes.
type Arm = [DVec2; 3];

/// Heights of deck pivot and deck axle, and the deck's angle, of one side built from such arms: circles about the pins, no derivative.
fn side(design: &Design, arms: &[Arm], carriage: f64) -> (f64, f64, f64) {
    let (mut left, mut right) = (DVec2::ZERO, DVec2::new(carriage, design.lift.base_axle.to_m()));
    for pair in arms.chunks(2) {
        let (a, b) = (&pair[0], &pair[1]);
        let (ra, rb) = (a[0].distance(a[1]), b[0].distance(b[1]));
        let d = left.distance(right);
        let along = (ra * ra - rb * rb + d * d) / (2.0 * d);
        let unit = (right - left) / d;
        let centre = left + along * unit + (ra * ra - along * along).sqrt() * unit.perp();
        let turn = |arm: &Arm, low: DVec2| {
            let angle = (centre - low).to_angle() - (arm[1] - arm[0]).to_angle();
            low + DVec2::from_angle(angle).rotate(arm[2] - arm[0])
        };
        (left, right) = (turn(b, right), turn(a, left));
    }
    let line = right - left;
    (left.y, right.y, line.to_angle() - (design.lift.deck_axle.to_m() / line.length()).asin())
}

fn drilled(design: &Design, dice: &mut Dice, sigma: f64) -> Vec<Arm> {
    let (length, centre) = (design.lift.arm_length.to_m(), design.lift.centre.value());
    (0..2 * design.lift.stages.get())
        .map(|_| {
            [0.0, centre * length, length].map(|x| DVec2::new(x + sigma * normal(dice), sigma * normal(dice)))
        })
        .collect()
}

/// Standard deviations of tilt, lean, twist and mismatch over many tables.
fn scatter(design: &Design, pose: &Pose, paired: bool) -> [f64; 4] {
    let mut dice = Dice(11);
    let exact = side(design, &drilled(design, &mut dice, 0.0), pose.carriage_x);
    let mut squares = [0.0; 4];
    for _ in 0..TRIALS {
        let left = drilled(design, &mut dice, SIGMA);
        let right = if paired { left.clone() } else { drilled(design, &mut dice, SIGMA) };
        let [one, two] = [left, right].map(|arms| side(design, &arms, pose.carriage_x));
        let spread = design.frames.spread.to_m();
        let values = [
            f64::midpoint(one.2, two.2) - exact.2,
            ((two.0 - one.0) + (two.1 - one.1)) / 2.0 / spread,
            two.2 - one.2,
            (two.1 - two.0) - (one.1 - one.0),
        ];
        for (square, value) in squares.iter_mut().zip(values) {
            *square += value * value;
        }
    }
    squares.map(|square| (square / TRIALS as f64).sqrt())
}

#[test]
fn the_analysis_agrees_with_a_monte_carlo_of_the_linkage() {
    for design in designs() {
        let solver = solver(&design);
        for height in heights(&design) {
            let pose = solver.pose_at_height(height).unwrap();
            for method in [Method::Alone, Method::Pairs] {
                let exact = exactness(&design, &solver, method, height).unwrap();
                let scatter = scatter(&design, &pose, method == Method::Pairs);
                let computed =
                    [exact.tilt, exact.lean, exact.twist, exact.mismatch].map(|effect| effect.rss * SIGMA);
                for (have, want) in computed.into_iter().zip(scatter) {
                    assert!(
                        (have - want).abs() <= CLOSE * want + 1e-12,
                        "{method:?} at {height}: {have} against {want}"
                    );
                }
            }
        }
    }
}

/// The test's own linkage is the program's where no hole is off.
#[test]
fn the_exact_side_is_the_linkage() {
    for design in designs() {
        let solver = solver(&design);
        let pose = solver.pose_at_height(heights(&design)[1]).unwrap();
        let (pivot, axle, tilt) = side(&design, &drilled(&design, &mut Dice(1), 0.0), pose.carriage_x);
        assert!((pivot - pose.top.origin.y).abs() < 1e-9);
        assert!((axle - pose.top.point(pose.top_axle).y).abs() < 1e-9);
        assert!((tilt - pose.phi).abs() < 1e-9);
    }
}

#[test]
fn the_worst_case_is_met_and_never_passed() {
    let mut dice = Dice(3);
    for design in designs() {
        let solver = solver(&design);
        for height in heights(&design) {
            let pose = solver.pose_at_height(height).unwrap();
            let worst = exactness(&design, &solver, Method::Pairs, height).unwrap().tilt;
            assert!(worst.rss <= worst.worst);
            let exact = side(&design, &drilled(&design, &mut dice, 0.0), pose.carriage_x).2;
            let arms = drilled(&design, &mut dice, 0.0);
            // Every error at its limit, in the direction that its own effect says.
            let mut all = arms.clone();
            for arm in 0..arms.len() {
                for hole in 0..3 {
                    for axis in [DVec2::X, DVec2::Y] {
                        let mut one = arms.clone();
                        one[arm][hole] += SIGMA * axis;
                        let up = side(&design, &one, pose.carriage_x).2 > exact;
                        all[arm][hole] += SIGMA * if up { axis } else { -axis };
                    }
                }
            }
            let met = side(&design, &all, pose.carriage_x).2 - exact;
            assert!((met - worst.worst * SIGMA).abs() < CLOSE * met, "{met} against {}", worst.worst * SIGMA);
        }
    }
}

/// A rhombus of arms that are all too long by the same amount stays a rhombus: the deck stays level.
#[test]
fn turning_end_for_end_keeps_the_deck_level() {
    for demo in Demo::ALL {
        let design = demo.design();
        let solver = solver(&design);
        for height in heights(&design) {
            let at = |method| exactness(&design, &solver, method, height).unwrap();
            assert!(at(Method::Turned).tilt.worst < 1e-9);
            assert!(
                at(Method::Pairs).tilt.worst > 1.0,
                "a unit error tilts by more than a unit of angle a metre"
            );
            assert_eq!(at(Method::Pairs).twist, Effect::default());
            assert!(at(Method::Alone).play.rss > 0.0);
        }
    }
}

#[test]
fn the_error_to_hold_gives_the_tilt_back() {
    let design = Demo::PaperLift.design();
    let effect = exactness(&design, &solver(&design), Method::Pairs, 0.52).unwrap().tilt;
    let hold = effect.error_for(0.01);
    assert!((effect.times(hold.rss).rss - 0.01).abs() < 1e-12);
    assert!((effect.times(hold.worst).worst - 0.01).abs() < 1e-12);
    assert!(hold.worst < hold.rss);
    assert!(Effect::default().error_for(0.01).worst.is_infinite());
}

/// Where a hole of a part lies in the plane, in a pose.
fn place(part: &Part, at: [Length; 2], pose: &Pose) -> DVec2 {
    let block = &part.places[0];
    let seat = seat(pose, part.rides);
    let [along, across] = at.map(Length::to_m);
    seat.origin + (block.x[0] + along) * seat.along + (block.y[0] + across) * seat.along.perp()
}

#[test]
fn every_hole_of_a_joint_lies_on_one_line() {
    for design in designs() {
        let list = parts(&design);
        let solver = solver(&design);
        let stages = usize::try_from(design.lift.stages.get()).unwrap();
        for height in heights(&design) {
            let pose = solver.pose_at_height(height).unwrap();
            for joint in Joint::all(stages) {
                let mut points: Vec<DVec2> = Vec::new();
                for part in &list {
                    for hole in part.holes.iter().filter(|hole| hole.joint == Some(joint)) {
                        points.push(place(part, [hole.along, hole.across], &pose));
                    }
                }
                if joint.is_axle() {
                    let rides =
                        if joint == Joint::BaseAxle { Rides::BaseCarriage } else { Rides::DeckCarriage };
                    points.push(seat(&pose, rides).origin);
                }
                assert!(points.len() >= 2, "{joint:?} joins two parts");
                for point in &points {
                    // Sizes are whole steps of 1/1600 mm, halves of them rounded.
                    assert!(point.distance(points[0]) < 3e-6, "{joint:?}: {points:?}");
                }
            }
        }
    }
}

#[test]
fn tables_hold_every_hole_with_its_bit() {
    for demo in Demo::ALL {
        let design = demo.design();
        let list = parts(&design);
        let tables = tables(&list, Length::mm(0.2));
        let holes: usize = list.iter().map(|part| part.holes.len() * part.count as usize).sum();
        let told: usize = tables.iter().map(|table| table.rows.len() * table.count as usize).sum();
        assert_eq!(holes, told);
        for table in &tables {
            assert!(table.rows.windows(2).all(|pair| pair[0].letter != pair[1].letter));
            for row in &table.rows {
                assert!(
                    row.along > Length::ZERO && row.along < table.size[0],
                    "{} {}",
                    table.name,
                    row.letter
                );
                assert!(
                    row.across > Length::ZERO && row.across < table.size[1],
                    "{} {}",
                    table.name,
                    row.letter
                );
                assert_eq!(row.purpose == Purpose::Countersunk, row.bit.countersink.is_some());
            }
        }
        let screws: u32 =
            list.iter().filter(|part| part.form == Form::WoodScrew).map(|part| part.count).sum();
        assert_eq!(pilots(&list).iter().map(|pilot| pilot.count).sum::<u32>(), screws);
        assert!(
            pilots(&list).iter().all(|pilot| pilot.depth > Length::ZERO && pilot.diameter > Length::ZERO)
        );
        assert!(order(&design, &list).len() >= 6);
    }
}
