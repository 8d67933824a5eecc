//! What is missing for one sheet less.
use super::job::{Job, Piece};
use super::search::Search;
use crate::quantity::Length;

/// Layouts tried for each question: enough to trust a no to a millimetre or two.
const EFFORT: u32 = 3_000;

/// Layouts tried before the search is asked whether it has come down.
const LOOK: u32 = 250;

/// Halvings of the distance looked through.
const HALVINGS: u32 = 7;

/// How much longer or narrower things are tried at most, and as a part of their own size: a builder calls more another design.
const MOST: Length = Length::mm(128.0);
const MOST_OF_SIZE: i64 = 5;

/// A change after which one sheet less is enough, tried out.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Hint {
    /// The sheet would have to be so much longer.
    LongerSheet(Length),
    /// The sheet would have to be so much wider.
    WiderSheet(Length),
    /// This part, by number and name, so much narrower.
    Narrower(u32, String, Length),
    /// This part so much shorter.
    Shorter(u32, String, Length),
}

#[derive(Clone, Debug)]
enum Question {
    Longer,
    Wider,
    Narrower(u32, String),
    Shorter(u32, String),
}

/// Looks for what would save a sheet: a value driven by [`Adviser::advance`], like the search itself.
pub struct Adviser {
    job: Job,
    goal: usize,
    /// How many questions there were.
    asked: usize,
    questions: Vec<Question>,
    hints: Vec<Hint>,
    /// Sizes between which the present question's answer lies, and whether the upper one is known to do.
    span: (Length, Length),
    proven: bool,
    halvings: u32,
    search: Option<(Length, Search)>,
}

impl Adviser {
    /// An adviser for a job that now takes so many bought sheets.
    #[must_use]
    pub fn new(job: &Job, bought: usize) -> Self {
        let mut kinds: Vec<(u32, String)> = Vec::new();
        for piece in &job.pieces {
            if !kinds.iter().any(|(part, _)| *part == piece.part) {
                kinds.push((piece.part, piece.name.clone()));
            }
        }
        let mut questions: Vec<Question> = kinds
            .into_iter()
            .rev()
            .flat_map(|(part, name)| [Question::Shorter(part, name.clone()), Question::Narrower(part, name)])
            .collect();
        questions.extend([Question::Wider, Question::Longer]);
        if bought < 2 {
            questions.clear();
        }
        let mut adviser = Self {
            job: job.clone(),
            goal: bought.saturating_sub(1),
            asked: questions.len(),
            questions,
            hints: Vec::new(),
            span: (Length::ZERO, MOST),
            proven: false,
            halvings: 0,
            search: None,
        };
        adviser.ask();
        adviser
    }

    /// Sets out for the next question: between no change and the most that is tried.
    fn ask(&mut self) {
        self.proven = false;
        self.halvings = 0;
        let own = |part: u32, size: fn(&Piece) -> Length| {
            let sizes = self.job.pieces.iter().filter(|piece| piece.part == part).map(size);
            Length::from_steps(sizes.min().unwrap_or(Length::ZERO).steps() / MOST_OF_SIZE)
        };
        let most = match self.questions.last() {
            Some(Question::Narrower(part, _)) => own(*part, |piece| piece.width),
            Some(Question::Shorter(part, _)) => own(*part, |piece| piece.length),
            _ => MOST,
        };
        self.span = (Length::ZERO, most.min(MOST));
    }

    /// What has been found so far, in the order it was tried: the sheet first, then part by part.
    #[must_use]
    pub fn hints(&self) -> &[Hint] {
        &self.hints
    }

    /// The share of the questions that is answered, 0 to 1.
    #[must_use]
    pub fn progress(&self) -> f64 {
        if self.asked == 0 { 1.0 } else { 1.0 - self.questions.len() as f64 / self.asked as f64 }
    }

    /// Whether every question is answered.
    #[must_use]
    pub fn is_done(&self) -> bool {
        self.questions.is_empty()
    }

    /// Tries about so many more layouts; whether every question is answered.
    pub fn advance(&mut self, steps: u32) -> bool {
        for _ in 0..steps.div_ceil(LOOK) {
            self.look();
        }
        self.is_done()
    }

    fn look(&mut self) {
        let Some(question) = self.questions.last().cloned() else { return };
        let (by, search) = self.search.get_or_insert_with(|| {
            let by = if self.proven || self.halvings > 0 {
                Length::from_steps(i64::midpoint(self.span.0.steps(), self.span.1.steps()))
            } else {
                self.span.1
            };
            (by, Search::new(&changed(&self.job, &question, by)))
        });
        let by = *by;
        search.advance(LOOK);
        let fits = search.best().left.is_empty() && search.best().bought(search.job()) <= self.goal;
        if fits {
            self.proven = true;
            self.span.1 = by;
        } else if search.tried() >= u64::from(EFFORT) {
            self.span.0 = by;
        } else {
            return;
        }
        self.search = None;
        self.halvings += 1;
        if !self.proven || self.halvings > HALVINGS {
            self.answer(question);
        }
    }

    fn answer(&mut self, question: Question) {
        if self.proven {
            let by = Length::mm(self.span.1.to_mm().ceil());
            self.hints.push(match question {
                Question::Longer => Hint::LongerSheet(by),
                Question::Wider => Hint::WiderSheet(by),
                Question::Narrower(part, name) => Hint::Narrower(part, name, by),
                Question::Shorter(part, name) => Hint::Shorter(part, name, by),
            });
        }
        self.questions.pop();
        self.ask();
    }
}

fn changed(job: &Job, question: &Question, by: Length) -> Job {
    let mut job = job.clone();
    let less = |side: Length| (side - by).max(Length::from_steps(1));
    for blank in job.blanks.iter_mut().filter(|blank| blank.count.is_none()) {
        match question {
            Question::Longer => blank.length += by,
            Question::Wider => blank.width += by,
            Question::Narrower(..) | Question::Shorter(..) => {}
        }
    }
    for piece in &mut job.pieces {
        match question {
            Question::Narrower(part, _) if piece.part == *part => piece.width = less(piece.width),
            Question::Shorter(part, _) if piece.part == *part => piece.length = less(piece.length),
            _ => {}
        }
    }
    job
}
