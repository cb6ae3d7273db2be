#include "engine/drafting/form.hpp"

#include "engine/assets/world.hpp"
#include "engine/drafting/draft.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/drafting/form_sections.hpp"
#include "engine/drafting/list_text.hpp"
#include "engine/drafting/substances.hpp"
#include "engine/generator/write.hpp"
#include "engine/strict/edit.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::drafting {

namespace {

/// Puts the rows together, one group after another.
class Builder {
public:
  Builder(const std::string& text, const author::Shelf& shelf)
      : text_(text), shelf_(shelf), file_(text, "case"), root_(file_.root()) {}

  Form build() {
    specimen();
    substances();
    way();
    request();
    review();
    add_counter(form_, root_, text_, shelf_);
    bench();
    add_bottle_ages(form_, root_, text_, shelf_);
    add_rules(form_, text_, shelf_);
    questions();
    add_marks(form_, text_, shelf_);
    tests();
    bottles();
    return std::move(form_);
  }

private:
  void group(const char* key, const char* title) { form_.groups.push_back({key, title, {}}); }

  Row& row(const std::string& path, const std::string& label, Entry entry, const std::string& about) {
    Row one;
    one.path = path;
    one.label = label;
    one.entry = entry;
    one.value = typed_at(text_, path);
    one.about = about;
    form_.groups.back().rows.push_back(std::move(one));
    return form_.groups.back().rows.back();
  }

  /// A number that has its range among the limits.
  Row& ranged(const std::string& path, const std::string& label, const char* range, double step,
              const std::string& about) {
    const strict::Range& limits = shelf_.limits->ranges.at(range);
    Row& one = row(path, label, limits.unit.empty() ? Entry::Number : Entry::Quantity, about);
    one.unit = limits.unit;
    one.range =
        fmt::format("{:g} to {:g}{}", limits.low, limits.high, limits.unit.empty() ? "" : " " + limits.unit);
    one.can_step = true;
    one.step = step;
    return one;
  }

  [[nodiscard]] std::optional<strict::Table> specimen_table() const { return root_.table_if_any("specimen"); }

  void specimen() {
    group("specimen", "The specimen");
    ranged("specimen.volume", "volume", "volume", 5, "the float alone takes 40 mL or so");
    ranged("specimen.temperature", "temperature", "temperature", 1,
           "as it reaches the bench; a way to the bench sets it by itself");
    ranged("specimen.ph", "pH", "ph", 0.1, "as passed; chloride or sodium makes up the charges");
    ranged("specimen.yellow", "yellow", "yellow", 0,
           "absorbance a cm at 420 nm: 0.02 very dilute, 0.5 very concentrated");
  }

  void substances() {
    group("substances", "What is in it");
    const auto table = specimen_table();
    if (table) {
      form_.groups.back().rows = substance_rows(*table, text_, shelf_);
      form_.additions = additions_to(*table, shelf_);
    }
  }

  void way() {
    group("way", "Its way to the bench");
    ranged("specimen.stood", "stood open", "stood", 0.5, "in a lit cup, last of all before the bench");
    const auto table = specimen_table();
    const auto legs = table ? table->tables_or_none("leg").size() : 0;
    for (std::size_t i = 0; i < legs; ++i) {
      const std::string leg = fmt::format("specimen.leg[{}]", i);
      const std::string name = fmt::format("leg {}: ", i + 1);
      ranged(leg + ".hours", name + "for", "leg_hours", 0, "how long").removable = true;
      ranged(leg + ".temperature", name + "at", "leg_temperature", 1, "what is round the container");
      yes_no(leg + ".open", name + "open", "whether air gets to it");
      ranged(leg + ".light", name + "light", "leg_light", 0, "lit bench 500 to 1000 lx, window 10000 lx");
    }
    const auto put_in = table ? table->tables_or_none("preservative").size() : 0;
    for (std::size_t i = 0; i < put_in; ++i) {
      const std::string one = fmt::format("specimen.preservative[{}]", i);
      const std::string name = fmt::format("put in {}: ", i + 1);
      Row& bottle = row(one + ".bottle", name + "bottle", Entry::Choice, "");
      bottle.choices = bottle_keys();
      bottle.removable = true;
      Row& dose =
          row(one + ".dose_per_100_ml", name + "dose", Entry::Quantity, "for each 100 mL, in g or mL");
      dose.unit = "g";
      dose.can_step = true;
      ranged(one + ".at", name + "after", "leg_hours", 0.5, "so long after it was passed");
    }
    form_.preservatives = bottle_keys();
  }

  void yes_no(const std::string& path, const std::string& label, const std::string& about) {
    row(path, label, Entry::YesNo, about).choices = {"true", "false"};
  }

  void request() {
    group("request", "The request");
    row("title", "title", Entry::Line, "in the list of cases; do not give the answer away");
    row("level", "level", Entry::Choice, "sorts the list").choices = {"newcomer", "first", "trap", "exam"};
    ranged("seed", "seed", "seed", 1, "a number no other case has: how the float leans, where pieces hang");
    row("patient.name", "patient", Entry::Line, "invented, always");
    row("patient.age_sex", "age and sex", Entry::Line, "");
    row("patient.ward", "ward", Entry::Line, "");
    row("patient.request", "request", Entry::Line, "the doctor's words");
    row("patient.specimen_note", "specimen", Entry::Line, "kind, time and container, as on the form");
    row("story", "story", Entry::Paragraph, "on the Request tab");
    row("debrief", "debrief", Entry::Paragraph, "after the marks");
  }

  void review() {
    group("review", "Who stands for it");
    row("review.author", "author", Entry::Line, "with a version, once somebody is to stand for the case");
    row("review.reviewer", "reviewer", Entry::Line, "the colleague who looked at it");
    row("review.version", "version", Entry::Line, "1.0; the changelog is written on the page File");
    for (Row& one : form_.groups.back().rows) {
      one.optional = true;
    }
  }

  void bench() {
    group("bench", "The bench");
    ranged("bench.room", "room", "room", 1, "");
    ranged("bench.urinometer_zero_error", "float's error", "zero_error", 0.001,
           "what it reads in water, less 1.000");
    ranged("bench.urinometer_calibration", "float's mark", "calibration", 1,
           "the temperature it is made for");
    ranged("bench.refractometer_zero_error", "refractometer's error", "zero_error", 0.001, "the same");
  }

  void questions() {
    group("questions", "Questions about what it means");
    const auto decisions = root_.tables_or_none("decision");
    for (std::size_t i = 0; i < decisions.size(); ++i) {
      const std::string one = fmt::format("decision[{}]", i);
      const std::string name = fmt::format("{}: ", i + 1);
      row(one + ".prompt", name + "question", Entry::Line, "").removable = true;
      const auto options = decisions[i].table_if_any("options");
      const auto keys = options ? options->keys() : std::vector<std::string>{};
      for (const auto& key : keys) {
        row(fmt::format("{}.options.{}", one, key), name + spoken(key), Entry::Line, "");
      }
      Row& right = row(one + ".right", name + "right is", Entry::Choice, "");
      right.choices = keys;
      right.has_more = true;
      row(one + ".why", name + "why", Entry::Line, "shown when it was missed");
      ranged(one + ".weight", name + "weight", "weight", 5, "marks; 10 when nothing is written");
    }
  }

  void tests() {
    const auto asked = words_of_list(strict::value_at(text_, strict::path_from("asked.tests")).value_or(""));
    const auto add = [&](const std::string& key, const std::string& label, const std::string& about) {
      form_.tests.push_back({key, label, about, std::find(asked.begin(), asked.end(), key) != asked.end()});
    };
    add("look", "Colour, clarity, odour", "");
    add("specific_gravity", "Specific gravity by the float", "");
    for (const auto& test : shelf_.standards->rules.tests) {
      add(test.key, test.title, test.request);
    }
  }

  void bottles() {
    const auto out = words_of_list(strict::value_at(text_, strict::path_from("bench.reagents")).value_or(""));
    for (const auto& reagent : shelf_.world->catalogue.reagents) {
      form_.bottles.push_back(
          {reagent.key, reagent.label, "", std::find(out.begin(), out.end(), reagent.key) != out.end()});
    }
  }

  [[nodiscard]] std::vector<std::string> bottle_keys() const {
    std::vector<std::string> keys;
    for (const auto& reagent : shelf_.world->catalogue.reagents) {
      keys.push_back(reagent.key);
    }
    return keys;
  }

  const std::string& text_;
  const author::Shelf& shelf_;
  strict::File file_;
  strict::Table root_;
  Form form_;
};

/// Each problem at its row, and all of them in the order of the lines.
void place_problems(Form& form, const std::string& text, const scenario::Problems& problems) {
  for (const auto& problem : problems) {
    const std::string words = "found " + problem.found + "; expected " + problem.expected;
    form.problems.push_back(problem.line > 0 ? fmt::format("Line {}: {}", problem.line, words) : words);
    const std::string path = path_in_line(text, problem.line);
    for (Group& group : form.groups) {
      for (Row& row : group.rows) {
        if (!path.empty() && row.path == path) {
          row.problem = words;
        }
      }
    }
  }
}

} // namespace

Form form_of(const std::string& text, const scenario::Problems& problems, const author::Shelf& shelf) {
  Form form;
  if (strict::remove_value(text, strict::path_from("no_such_key"))) { // It is TOML.
    form = Builder(text, shelf).build();
  }
  place_problems(form, text, problems);
  return form;
}

const Row* find_row(const Form& form, const std::string& path) {
  for (const Group& group : form.groups) {
    for (const Row& row : group.rows) {
      if (row.path == path) {
        return &row;
      }
    }
  }
  return nullptr;
}

std::string first_amount(const std::string& path, const author::Shelf& shelf) {
  constexpr double part = 1.0 / 20;
  const auto steps = strict::path_from(path);
  const std::string section = steps.size() > 1 ? steps[1].key : "";
  const std::string key = steps.back().key;
  const auto& limits = limits_of(section, *shelf.limits);
  const auto limit =
      std::find_if(limits.begin(), limits.end(), [&](const scenario::Limit& one) { return one.key == key; });
  const double amount = limit == limits.end() ? 1 : limit->highest * part;
  return generator::plain_number(amount, 2) + " " + unit_in(section, key, *shelf.limits);
}

} // namespace matula::drafting
