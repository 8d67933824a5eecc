//! Looking for a better layout, step by step, for as long as the reader cares to wait.
use super::job::Job;
use super::layout::Layout;
use super::pack::{Packer, Plan, Split};
use super::random::Random;
use super::tidy::tidy;
use crate::design::Cutting;

/// Layouts in one cooling; then it starts warm again from another order.
const COOLING: u32 = 20_000;

/// Warmth at the beginning and the end of a cooling, in sheets.
const WARM: f64 = 0.02;
const COLD: f64 = 0.0005;

/// A search for a layout. It is a value without clock or thread: whoever holds it calls [`Search::advance`], shows [`Search::best`] and drops
/// it when enough. The same job gives the same layouts in the same order on every machine.
///
/// It is simulated annealing over the order in which pieces are laid, the way round each is tried first and how the rest is cut behind it:
/// S. Kirkpatrick et al., "Optimization by simulated annealing", Science 220 (1983), doi 10.1126/science.220.4598.671.
pub struct Search {
    packer: Packer,
    random: Random,
    /// Orders to start from, one a cooling in turn.
    starts: Vec<Vec<usize>>,
    coolings: usize,
    at: u32,
    present: Plan,
    present_cost: f64,
    best: Layout,
    best_cost: f64,
    /// Layouts tried so far.
    tried: u64,
    least: usize,
    job: Job,
}

impl Search {
    /// A search with its first layouts: pieces by area, by longer side and by width, the best of them kept.
    #[must_use]
    pub fn new(job: &Job) -> Self {
        let mut packer = Packer::new(job);
        let starts = starts(job);
        let plain = |order: &Vec<usize>, split| Plan {
            order: order.clone(),
            turned: vec![false; order.len()],
            split: vec![split; order.len()],
        };
        let mut first = plain(&starts[0], Split::Larger);
        let mut cost = packer.cost(&first);
        for order in &starts {
            for split in Split::ALL {
                let plan = plain(order, split);
                let its = packer.cost(&plan);
                if its < cost {
                    (first, cost) = (plan, its);
                }
            }
        }
        let best = in_order(job, packer.layout(&first));
        Self {
            packer,
            random: Random::new(0x5EED),
            starts,
            coolings: 0,
            at: 0,
            present: first,
            present_cost: cost,
            best,
            best_cost: cost,
            tried: 0,
            least: least(job),
            job: job.clone(),
        }
    }

    /// The best layout so far.
    #[must_use]
    pub const fn best(&self) -> &Layout {
        &self.best
    }

    /// What is laid out.
    #[must_use]
    pub const fn job(&self) -> &Job {
        &self.job
    }

    /// How many layouts have been tried.
    #[must_use]
    pub const fn tried(&self) -> u64 {
        self.tried
    }

    /// Whether no layout can do with fewer sheets: all pieces lie on as few as their area alone asks for. A search that goes on
    /// can only make the offcuts larger.
    #[must_use]
    pub fn is_least(&self) -> bool {
        self.best.left.is_empty() && self.best.bought(&self.job) <= self.least
    }

    /// Tries so many more layouts; whether a better one came up.
    pub fn advance(&mut self, steps: u32) -> bool {
        let count = self.present.order.len();
        if count < 2 {
            return false;
        }
        let before = self.best_cost;
        for _ in 0..steps {
            self.step(count);
        }
        self.best_cost < before
    }

    fn step(&mut self, count: usize) {
        if self.at >= COOLING {
            self.restart();
        }
        let warmth = WARM * libm::pow(COLD / WARM, f64::from(self.at) / f64::from(COOLING));
        self.at += 1;
        let change = Change::pick(&mut self.random, count);
        let undo = change.apply(&mut self.present);
        let cost = self.packer.cost(&self.present);
        self.tried += 1;
        let worse = cost - self.present_cost;
        if worse <= 0.0 || self.random.unit() < libm::exp(-worse / warmth) {
            self.present_cost = cost;
            if cost < self.best_cost - 1e-12 {
                self.best_cost = cost;
                self.best = in_order(&self.job, self.packer.layout(&self.present));
            }
        } else {
            undo.apply(&mut self.present);
        }
    }

    /// Starts warm again: from one of the orders first, from a shuffled one after.
    fn restart(&mut self) {
        self.coolings += 1;
        self.at = 0;
        let count = self.present.order.len();
        if let Some(order) = self.starts.get(self.coolings % (self.starts.len() + 1)) {
            self.present.order.clone_from(order);
        } else {
            for at in (1..count).rev() {
                let other = self.random.below(at + 1);
                self.present.order.swap(at, other);
            }
        }
        self.present.turned.fill(false);
        self.present.split.fill(Split::Larger);
        self.present_cost = self.packer.cost(&self.present);
    }
}

/// A layout for the saw with its strips in order; one for a router as it is.
fn in_order(job: &Job, mut layout: Layout) -> Layout {
    if job.cutting == Cutting::Straight {
        for sheet in &mut layout.sheets {
            if let Some(tidied) = tidy(job, sheet) {
                *sheet = tidied;
            }
        }
    }
    layout
}

/// Fewest bought sheets by area alone, offcuts taken as filled to the last corner.
fn least(job: &Job) -> usize {
    let area = |blank: &super::job::Blank| {
        let [length, width] = job.room(*blank);
        (length + job.kerf).to_m() * (width + job.kerf).to_m()
    };
    let pieces: f64 = job
        .pieces
        .iter()
        .map(|piece| (piece.length + job.kerf).to_m() * (piece.width + job.kerf).to_m())
        .sum();
    let offcuts: f64 =
        job.blanks.iter().filter_map(|blank| blank.count.map(|count| f64::from(count) * area(blank))).sum();
    let largest = job.blanks.iter().filter(|blank| blank.count.is_none()).map(area).fold(0.0, f64::max);
    let mut sheets = 0_usize;
    let mut room = offcuts;
    while largest > 0.0 && room < pieces && sheets < job.pieces.len() {
        sheets += 1;
        room += largest;
    }
    sheets
}

/// Orders worth starting from: by area, by longer side, by width and by length, the largest first.
fn starts(job: &Job) -> Vec<Vec<usize>> {
    let sorted = |key: &dyn Fn(i64, i64) -> [i64; 2]| {
        let mut order: Vec<usize> = (0..job.pieces.len()).collect();
        order.sort_by_key(|at| {
            let piece = &job.pieces[*at];
            core::cmp::Reverse(key(piece.length.steps(), piece.width.steps()))
        });
        order
    };
    vec![
        sorted(&|length, width| [length.saturating_mul(width), length]),
        sorted(&|length, width| [length.max(width), length.min(width)]),
        sorted(&|length, width| [width, length]),
        sorted(&|length, width| [length, width]),
    ]
}

/// A small change of a plan, and the one that takes it back.
#[derive(Clone, Copy)]
enum Change {
    Swap(usize, usize),
    Move(usize, usize),
    Split(usize, Split),
    Turn(usize),
}

impl Change {
    fn pick(random: &mut Random, count: usize) -> Self {
        let (one, other) = (random.below(count), random.below(count));
        match random.below(10) {
            0..4 => Self::Swap(one, other),
            4..7 => Self::Move(one, other),
            7..9 => Self::Split(one, Split::ALL[random.below(Split::ALL.len())]),
            _ => Self::Turn(one),
        }
    }

    /// Changes the plan and gives the change that undoes it.
    fn apply(self, plan: &mut Plan) -> Self {
        match self {
            Self::Swap(one, other) => {
                plan.order.swap(one, other);
                self
            }
            Self::Move(from, to) => {
                let piece = plan.order.remove(from);
                plan.order.insert(to, piece);
                Self::Move(to, from)
            }
            Self::Split(piece, split) => {
                Self::Split(piece, core::mem::replace(&mut plan.split[piece], split))
            }
            Self::Turn(piece) => {
                plan.turned[piece] = !plan.turned[piece];
                self
            }
        }
    }
}
