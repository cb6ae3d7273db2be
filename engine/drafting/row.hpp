#pragma once

#include <optional>
#include <string>
#include <vector>

namespace matula::drafting {

/// How a row of the form is filled in.
enum class Entry {
  Quantity,  ///< A number with a unit; a number alone is in the unit that stood there.
  Number,    ///< A bare number.
  Line,      ///< Words in one line.
  Paragraph, ///< Words in several lines.
  Choice,    ///< One of `choices`.
  YesNo,     ///< "true" or "false".
  Numbers    ///< Bare numbers with commas between them.
};

/// One row of the form: a value of the case's text, and what there is to know of it.
struct Row {
  std::string path;  ///< "specimen.dissolved.albumin"
  std::string label; ///< "albumin"
  Entry entry = Entry::Line;
  std::string value; ///< As it is typed: "130 mg/dL". Empty when it is not written.
  std::string unit;  ///< Of a quantity written for the first time.
  std::string range; ///< "0 to 2000 mg/dL"; empty for words.
  std::string about; ///< What it does, or what is usual.
  std::vector<std::string> choices;
  bool removable = false;
  bool has_more = false; ///< One more of its kind can be added behind it: an option of a question.
  bool optional = false; ///< May be left out: an empty entry takes it out of the text.
  bool can_step = false; ///< `less` and `more` make sense,
  double step = 0;       ///< by so much; 0: by a quarter.
  std::string problem;   ///< What is wrong with it, and what to write instead; empty when nothing is.
};

/// Rows that belong together.
struct Group {
  std::string key;   ///< "specimen", "substances", "way", "request", "review", "counter", "voids", "bench",
                     ///< "ages", "rules", "questions", "weights", "tolerances", "marking"
  std::string title; ///< A heading.
  std::vector<Row> rows;
};

/// Something that is there or not: a test asked for, a bottle out.
struct Tick {
  std::string key;
  std::string label;
  std::string about;
  bool on = false;
};

/// Something that can be added to the specimen.
struct Addition {
  std::string path;
  std::string label; ///< "albumin", "escherichia, growing"
};

/// What the counter expects of the student, as its own judge has it.
struct Answer {
  std::string verdict;              ///< "accept", "qualify" or "refuse"
  std::string words;                ///< "Accept, with a qualification"
  std::vector<std::string> because; ///< Every fault with its reason.
  std::vector<std::string> notes;   ///< What is to be borne in mind and costs nothing.
  std::vector<std::string> day;     ///< Of a 24-hour collection: its sums, "g protein in 24 h: 2.1".
};

/// The whole form as it stands.
struct Form {
  std::vector<Group> groups;
  std::vector<Tick> tests;
  std::vector<Tick> bottles;
  std::vector<Tick> requests; ///< What the form at the counter asks for.
  std::vector<Addition> additions;
  std::vector<std::string> preservatives; ///< Keys of bottles, any of which may be put in on the way.
  bool counter = false;                   ///< The case asks at the counter.
  std::optional<Answer> answer;           ///< Of the case as it last read well; nothing without a counter.
  std::vector<std::string> weights;       ///< What of its weights does not add up.
  bool answer_fresh = false;              ///< Both are of the text as it stands.
  std::vector<std::string> problems; ///< Of the whole text, each with its line; empty when it reads well.
};

} // namespace matula::drafting
