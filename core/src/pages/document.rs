//! A document: headings, sentences, tables, figures, and what the reader can do.

/// A page to read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Document {
    /// Its heading.
    pub title: String,
    /// Its contents from the top.
    pub blocks: Vec<Block>,
}

/// A piece of a document.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// A heading within the document.
    Heading(String),
    /// A paragraph.
    Text(Text),
    /// A paragraph of lesser weight: a source, a remark.
    Note(Text),
    /// What can hurt someone.
    Caution(Text),
    /// Points in no order.
    Points(Vec<Vec<Self>>),
    /// Steps in their order, numbered from 1.
    Steps(Vec<Vec<Self>>),
    /// A table.
    Table(Table),
    /// A figure.
    Figure(Figure),
    /// Something to open.
    Fold(Fold),
    /// What the reader can do here, side by side.
    Acts(Vec<Act>),
    /// Something the reader enters or chooses; the page hears it by [`super::Page::answer`].
    Field(Field),
    /// Pieces that belong together, side by side where there is room; the name is a class of the style sheet.
    Group(&'static str, Vec<Self>),
    /// SVG shapes that figures of the document refer to by `use`; nothing is seen of them here.
    Shapes(String),
    /// On paper, all that follows stands on a new page.
    NewPage,
}

/// A run of words.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Text(pub Vec<Span>);

/// A piece of a run of words.
#[derive(Clone, Debug, PartialEq)]
pub enum Span {
    /// Words.
    Words(String),
    /// Words of greater weight.
    Strong(String),
    /// A formula, with subscripts behind `_`: letters and digits, and a comma between them.
    Formula(String),
    /// A text to copy, in even widths.
    Code(String),
    /// Something to do.
    Act(Act),
}

/// A table with a heading line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// What it lists.
    pub caption: String,
    /// Names of the columns.
    pub head: Vec<String>,
    /// Its lines; as many cells as there are columns.
    pub rows: Vec<Vec<Cell>>,
    /// Lines above which stands a double rule: totals.
    pub foot: Vec<Vec<Cell>>,
}

/// A cell of a table.
#[derive(Clone, Debug, PartialEq)]
pub enum Cell {
    /// Words, from the left.
    Words(Text),
    /// A figure, flush right.
    Number(String),
    /// The same of greater weight.
    StrongNumber(String),
    /// A small picture.
    Picture(Figure),
    /// The heading of the lines that follow, alone in its line and as wide as the table.
    Heading(String),
}

/// A picture in lines.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// SVG elements without style, in the classes of the drawing language; the writer trusts them.
    pub marks: String,
    /// Width, px, or mm on paper where `true_scale` is set.
    pub width: f64,
    /// Height in the same unit.
    pub height: f64,
    /// What a person would read off it, for those who cannot see it; empty where the words beside it say all.
    pub label: String,
    /// Words beneath it.
    pub caption: Text,
    /// Whether its units are millimetres on paper.
    pub true_scale: bool,
}

/// Something to open.
#[derive(Clone, Debug, PartialEq)]
pub struct Fold {
    /// Its name, by which it stays open when the document changes; letters, digits and hyphens.
    pub id: String,
    /// The line that is always seen.
    pub line: Vec<Cell>,
    /// What opens.
    pub blocks: Vec<Block>,
    /// Whether it is open from the beginning.
    pub open: bool,
}

/// Something the reader enters or chooses.
#[derive(Clone, Debug, PartialEq)]
pub struct Field {
    /// The name by which the page hears the answer; lowercase letters, digits and hyphens.
    pub key: String,
    /// What is asked.
    pub label: String,
    /// The present answer as text.
    pub value: String,
    /// What can be answered, or what follows from the answer; may be empty.
    pub hint: String,
    /// What is wrong with the present answer and what would be right; empty where nothing is.
    pub fault: String,
    /// How it is answered.
    pub entry: Entry,
}

/// How a question is answered.
#[derive(Clone, Debug, PartialEq)]
pub enum Entry {
    /// In writing.
    Written,
    /// By one of several values, each with its words.
    Chosen(Vec<(String, String)>),
    /// On a scale from a least to a greatest number, in steps; the answer in words is for those who hear it.
    Slid {
        /// The least.
        least: f64,
        /// The greatest.
        most: f64,
        /// What an arrow key moves it by.
        step: f64,
        /// The present answer in words.
        words: String,
    },
    /// By yes or no, as the texts `yes` and `no`.
    Marked,
}

/// Something the reader can do.
#[derive(Clone, Debug, PartialEq)]
pub enum Act {
    /// Go to the side elevation with the deck at a height, m, and a part marked.
    Go {
        /// What stands on the button.
        words: String,
        /// Deck height, m.
        height: f64,
        /// The check whose part is marked, by its id; empty where none is.
        check: &'static str,
    },
    /// Take over another design; undo brings the present one back.
    Take {
        /// What stands on the button.
        words: String,
        /// The design, as a link without view.
        link: String,
    },
    /// Save a file that the page can write.
    Save {
        /// What stands on the button.
        words: String,
        /// The file's name.
        file: String,
    },
    /// Print what is on screen.
    Print {
        /// What stands on the button.
        words: String,
    },
    /// Ask the browser to keep, bring or pass on something; see the page's `views/shelf`.
    Keep {
        /// What stands on the button.
        words: String,
        /// What is asked for.
        what: String,
    },
    /// Take over another design and look at it in the side elevation; undo brings the present one back.
    Open {
        /// What stands on the button.
        words: String,
        /// The design, as a link without view.
        link: String,
    },
    /// Go to another view.
    View {
        /// What stands on the button.
        words: String,
        /// The view's word in the address.
        view: &'static str,
    },
    /// Give the page an answer.
    Answer {
        /// What stands on the button.
        words: String,
        /// The name by which the page hears it.
        key: String,
        /// The answer.
        value: String,
        /// Whether it is the present answer; none for a button that is no choice.
        pressed: Option<bool>,
    },
    /// Something to tick off.
    Tick {
        /// What is ticked.
        words: String,
        /// What the tick is kept under, whatever the units: letters, digits and `-`.
        key: String,
    },
    /// Take all ticks away.
    Untick {
        /// What stands on the button.
        words: String,
    },
}

impl Text {
    /// With more words after it.
    #[must_use]
    pub fn words(mut self, words: impl Into<String>) -> Self {
        self.0.push(Span::Words(words.into()));
        self
    }

    /// With words of greater weight after it.
    #[must_use]
    pub fn strong(mut self, words: impl Into<String>) -> Self {
        self.0.push(Span::Strong(words.into()));
        self
    }

    /// With a formula after it.
    #[must_use]
    pub fn formula(mut self, words: impl Into<String>) -> Self {
        self.0.push(Span::Formula(words.into()));
        self
    }

    /// With a text to copy after it.
    #[must_use]
    pub fn code(mut self, words: impl Into<String>) -> Self {
        self.0.push(Span::Code(words.into()));
        self
    }

    /// With something to do after it.
    #[must_use]
    pub fn act(mut self, act: Act) -> Self {
        self.0.push(Span::Act(act));
        self
    }
}

impl<T: Into<String>> From<T> for Text {
    fn from(words: T) -> Self {
        Self(vec![Span::Words(words.into())])
    }
}

impl Cell {
    /// Words, from the left.
    #[must_use]
    pub fn words(words: impl Into<Text>) -> Self {
        Self::Words(words.into())
    }

    /// A figure, flush right.
    #[must_use]
    pub fn number(number: impl Into<String>) -> Self {
        Self::Number(number.into())
    }
}

impl Block {
    /// A paragraph.
    #[must_use]
    pub fn text(words: impl Into<Text>) -> Self {
        Self::Text(words.into())
    }

    /// A paragraph of lesser weight.
    #[must_use]
    pub fn note(words: impl Into<Text>) -> Self {
        Self::Note(words.into())
    }

    /// A heading within the document.
    #[must_use]
    pub fn heading(words: impl Into<String>) -> Self {
        Self::Heading(words.into())
    }
}
