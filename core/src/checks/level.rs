//! The table at one height, as the checks look at it.
//!
//! Plain `f64` in SI.
use super::timber::Rectangle;
use crate::mechanics::statics::Forces;
use crate::mechanics::{Deflection, Diagram, Fault, Motion, Pose, Section, Solver, State, Torque};

/// What has been computed at one height.
#[derive(Clone, Copy, Debug)]
pub struct Level<'a> {
    /// Height of the deck, m.
    pub deck: f64,
    /// Where every part is.
    pub pose: &'a Pose,
    /// Forces at rest.
    pub state: &'a State,
    /// Forces while raising and lowering.
    pub motion: &'a Motion,
    /// What the crank feels; none without a screw.
    pub torque: Option<Torque>,
    /// How the deck gives under the live load, where it was asked for.
    pub deflection: Option<&'a Deflection>,
}

/// A height with the section forces in arms and rails at rest, while raising and while lowering; totals of all sides.
#[derive(Clone, Debug)]
pub(super) struct Loaded<'a> {
    pub level: Level<'a>,
    /// In every state, of the arms A1, B1, A2, ...
    pub arms: [Vec<Diagram>; 3],
    /// In every state.
    pub deck_rails: [Diagram; 3],
    /// In every state; none without casters.
    pub base_rails: [Option<Diagram>; 3],
    /// Of each arm the section forces that stress its edge most, holes left out, in any state.
    pub bent: Vec<Section>,
    /// The greatest push along each arm in any state, N.
    pub pushed: Vec<f64>,
}

impl<'a> Loaded<'a> {
    /// `arm` is the section of an arm without its holes.
    pub fn new(solver: &Solver, level: Level<'a>, arm: &Rectangle) -> Result<Self, Fault> {
        let [rest, raise, lower] = forces(&level);
        let arms = |forces: &Forces| solver.diagrams(level.pose, forces);
        let rails = |forces: &Forces| solver.rails(level.pose, forces);
        let [first, second, third] = [rails(rest)?, rails(raise)?, rails(lower)?];
        let arms = [arms(rest)?, arms(raise)?, arms(lower)?];
        let (modulus, area) = (arm.modulus(), arm.area());
        let states = |place: usize| arms.iter().filter_map(move |state| state.get(place));
        let bent = |place: usize| {
            let sections = states(place).map(|diagram| diagram.worst_section(modulus, area));
            sections.fold(Section::default(), |most, here| arm.worse(most, here))
        };
        let pushed =
            |place: usize| states(place).fold(0.0, |most: f64, diagram| most.max(-diagram.least_axial()));
        let places = 0..2 * level.pose.n;
        Ok(Self {
            bent: places.clone().map(bent).collect(),
            pushed: places.map(pushed).collect(),
            arms,
            deck_rails: [first.0, second.0, third.0],
            base_rails: [first.1, second.1, third.1],
            level,
        })
    }

    /// Height of the deck, m.
    pub fn deck(&self) -> f64 {
        self.level.deck
    }

    /// Forces at rest, while raising, while lowering.
    pub fn forces(&self) -> [&'a Forces; 3] {
        forces(&self.level)
    }

    /// The greatest force along the screw in either sense, N.
    pub fn drive(&self) -> f64 {
        self.forces().into_iter().fold(0.0, |most, forces| most.max(forces.drive.abs()))
    }

    /// The greatest push along the screw, N; zero where it is only pulled. A pulled screw that must be cranked down is pushed.
    pub fn push(&self) -> f64 {
        let sigma = self.level.state.sigma;
        [&self.level.motion.raise, &self.level.motion.lower]
            .into_iter()
            .fold(0.0, |most, forces| most.max(sigma * forces.drive))
    }

    /// The larger torque on the screw, bearing included, N m.
    pub fn torque(&self) -> f64 {
        self.level.torque.map_or(0.0, |torque| torque.raise.abs().max(torque.lower.abs()))
    }
}

fn forces<'a>(level: &Level<'a>) -> [&'a Forces; 3] {
    [&level.state.rest, &level.motion.raise, &level.motion.lower]
}
