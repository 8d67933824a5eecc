//! Edits of the design, and their history.
use std::borrow::Cow;
use std::sync::OnceLock;

use risewright::design::{Design, Field};
use risewright::report::{Refusal, revise};
use risewright::share::link;

/// The most steps that can be taken back.
const DEPTH: usize = 1000;

/// One change of the design.
#[derive(Clone, Debug)]
pub enum Edit {
    /// Another name.
    Name(String),
    /// Another value of an input, in its steps.
    Input(&'static Field, i64),
    /// Several inputs at once, or another design; it has been analysed and holds.
    Whole(&'static str, Box<Design>),
}

impl Edit {
    /// What the change is called beside undo and redo.
    pub const fn title(&self) -> &'static str {
        match self {
            Self::Name(_) => "name",
            Self::Input(field, _) => field.label,
            Self::Whole(title, _) => title,
        }
    }

    fn apply(self, design: &Design) -> Result<Design, Refusal> {
        match self {
            Self::Name(name) => {
                let mut renamed = design.clone();
                renamed.rename(&name);
                Ok(renamed)
            }
            Self::Input(field, steps) => revise(design, field, steps),
            Self::Whole(_, whole) => Ok(*whole),
        }
    }
}

/// A design as it was, and the change that led away from it or back to it.
#[derive(Clone, Debug)]
pub struct Step {
    design: Design,
    title: Cow<'static, str>,
    link: OnceLock<String>,
}

impl Step {
    const fn new(design: Design, title: Cow<'static, str>) -> Self {
        Self { design, title, link: OnceLock::new() }
    }

    /// What the change is called.
    pub fn title(&self) -> &str {
        &self.title
    }

    /// The design as a link, worked out once.
    pub fn link(&self) -> &str {
        self.link.get_or_init(|| link::encode(&self.design))
    }
}

/// A step as it was kept elsewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Turned {
    /// What the change is called.
    pub title: String,
    /// The design as it was.
    pub design: Design,
}

impl From<Turned> for Step {
    fn from(turned: Turned) -> Self {
        Self::new(turned.design, Cow::Owned(turned.title))
    }
}

/// The design with its history. Every design in it can be built: an edit that cannot is refused and changes nothing.
#[derive(Clone, Debug)]
pub struct Book {
    present: Design,
    past: Vec<Step>,
    future: Vec<Step>,
    /// While a gesture lasts: whether it has a step already.
    gesture: Option<bool>,
}

impl Book {
    /// A history that begins with this design.
    pub const fn new(design: Design) -> Self {
        Self { present: design, past: Vec::new(), future: Vec::new(), gesture: None }
    }

    /// The design at present.
    pub const fn design(&self) -> &Design {
        &self.present
    }

    /// Applies an edit and returns whether it changed anything.
    pub fn apply(&mut self, edit: Edit) -> Result<bool, Refusal> {
        let title = edit.title();
        let changed = edit.apply(&self.present)?;
        if changed == self.present {
            return Ok(false);
        }
        let before = core::mem::replace(&mut self.present, changed);
        self.future.clear();
        if self.gesture != Some(true) {
            self.past.push(Step::new(before, Cow::Borrowed(title)));
            if self.past.len() > DEPTH {
                self.past.remove(0);
            }
        }
        if self.gesture.is_some() {
            self.gesture = Some(true);
        }
        Ok(true)
    }

    /// From here to [`Self::end`], all edits are one step of the history.
    pub const fn begin(&mut self) {
        self.gesture = Some(false);
    }

    /// Ends what [`Self::begin`] began; a gesture that came back to where it started leaves no step.
    pub fn end(&mut self) {
        if self.gesture.take() == Some(true)
            && self.past.last().is_some_and(|step| step.design == self.present)
        {
            self.past.pop();
        }
    }

    /// Takes up a history that was kept: steps that led to the present design, and steps that were taken back, each the nearest last.
    pub fn recall(&mut self, past: Vec<Turned>, future: Vec<Turned>) {
        self.gesture = None;
        self.past = past.into_iter().map(Step::from).collect();
        self.future = future.into_iter().map(Step::from).collect();
    }

    /// The steps that can be taken back, the latest last.
    pub fn past(&self) -> &[Step] {
        &self.past
    }

    /// The steps that can be done again, the next last.
    pub fn future(&self) -> &[Step] {
        &self.future
    }

    /// What undo would take back.
    pub fn undoes(&self) -> Option<&str> {
        self.past.last().map(Step::title)
    }

    /// What redo would do again.
    pub fn redoes(&self) -> Option<&str> {
        self.future.last().map(Step::title)
    }

    /// Takes the last step back.
    pub fn undo(&mut self) {
        self.gesture = None;
        Self::turn(&mut self.present, &mut self.past, &mut self.future);
    }

    /// Does the step again that was taken back last.
    pub fn redo(&mut self) {
        self.gesture = None;
        Self::turn(&mut self.present, &mut self.future, &mut self.past);
    }

    fn turn(present: &mut Design, from: &mut Vec<Step>, to: &mut Vec<Step>) {
        if let Some(Step { design, title, .. }) = from.pop() {
            let left = core::mem::replace(present, design);
            to.push(Step::new(left, title));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn input(key: &str, steps: i64) -> Edit {
        Design::field(key)
            .map_or_else(|| Edit::Name(format!("no field {key}")), |field| Edit::Input(field, steps))
    }

    #[test]
    fn undo_and_redo_walk_the_same_way() {
        let mut book = Book::new(Design::default());
        let mut seen = vec![book.design().clone()];
        for edit in [Edit::Name("Bench".into()), input("lm", 9_000_000_000), input("ch", 128_000)] {
            assert!(book.apply(edit).is_ok_and(|changed| changed));
            seen.push(book.design().clone());
        }
        for design in seen.iter().rev().skip(1) {
            book.undo();
            assert_eq!(book.design(), design);
        }
        assert_eq!(book.undoes(), None);
        for design in &seen[1..] {
            book.redo();
            assert_eq!(book.design(), design);
        }
        assert_eq!(book.redoes(), None);
    }

    #[test]
    fn a_gesture_is_one_step() {
        let mut book = Book::new(Design::default());
        book.begin();
        for name in ["B", "Be", "Ben"] {
            assert!(book.apply(Edit::Name(name.into())).is_ok());
        }
        book.end();
        book.undo();
        assert_eq!(book.design(), &Design::default());
        assert_eq!(book.undoes(), None);
    }

    #[test]
    fn a_gesture_that_comes_back_leaves_nothing() {
        let mut book = Book::new(Design::default());
        let name = book.design().name.clone();
        book.begin();
        for name in ["other".to_owned(), name] {
            assert!(book.apply(Edit::Name(name)).is_ok());
        }
        book.end();
        assert_eq!(book.undoes(), None);
    }

    #[test]
    fn a_refused_edit_changes_nothing() {
        let mut book = Book::new(Design::default());
        assert!(book.apply(input("al", -1)).is_err());
        assert_eq!(book.design(), &Design::default());
        assert_eq!(book.undoes(), None);
    }

    #[test]
    fn an_edit_after_undo_drops_the_steps_ahead() {
        let mut book = Book::new(Design::default());
        assert!(book.apply(Edit::Name("one".into())).is_ok());
        book.undo();
        assert_eq!(book.redoes(), Some("name"));
        assert!(book.apply(Edit::Name("two".into())).is_ok());
        assert_eq!(book.redoes(), None);
    }
}
