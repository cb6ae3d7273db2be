#include "engine/learner/rules.hpp"

#include "engine/strict/file.hpp"
#include "engine/strict/table.hpp"

namespace matula::learner {

namespace {

using strict::Range;
using strict::Table;

const Range share{0, 1, ""};
const Range count{1, 100000, ""};
const Range grades{0, 6, "grades"};

int whole(const Table& t, const std::string& key) {
  return t.integer(key, count);
}

void read_lines(const Table& t, Rules& rules) {
  rules.latest_readings = whole(t, "latest");
  rules.shift_from = whole(t, "shift_from");
  rules.lines_from = whole(t, "lines_from");
  rules.speaking.least_shift = t.number("least_shift", grades);
  rules.speaking.least_chance = t.number("least_chance", share);
  rules.speaking.near = t.number("near", grades);
  rules.speaking.least_near = whole(t, "least_near");
  rules.speaking.widening = t.number("widening", {1, 3, ""});
  static_cast<void>(t.text("source"));
}

void read_confusion(const Table& t, Rules& rules) {
  rules.confusion_from = whole(t, "from");
  rules.least_swaps = whole(t, "least_swaps");
  rules.least_swap_chance = t.number("least_chance", share);
  rules.colours = t.texts_or_none("colours");
  if (rules.colours.size() != statistics::grades) {
    t.complain("colours", "six colours, from negative to 4+");
    rules.colours.resize(statistics::grades);
  }
  static_cast<void>(t.text("source"));
}

void read_progress(const Table& t, Rules& rules) {
  rules.latest_answers = whole(t, "latest");
  rules.right_from = whole(t, "right_from");
  rules.recent = whole(t, "recent");
  rules.before = whole(t, "before");
  rules.mastered_from = whole(t, "mastered_from");
  rules.mastered_chance = t.number("mastered_chance", share);
  rules.fault_from = whole(t, "fault_from");
  rules.missed_from = whole(t, "missed_from");
  rules.due_costs = whole(t, "due_costs");
  rules.most_sentences = whole(t, "most_sentences");
  static_cast<void>(t.text("source"));
}

void read_memory(const Table& t, Rules& rules) {
  const Range days{0.001, 3650, "days"};
  rules.fading_skills = t.texts_or_none("skills");
  rules.memory.first_days = t.number("first_days", days);
  rules.memory.grows = t.number("grows", {1, 10, ""});
  rules.memory.falls = t.number("falls", {0.01, 1, ""});
  rules.memory.least_days = t.number("least_days", days);
  rules.due_below = t.number("due_below", {0.01, 0.999, ""});
  static_cast<void>(t.text("source"));
}

void read_knowledge(const Table& t, Rules& rules) {
  rules.knowledge.first = t.number("first", share);
  rules.knowledge.learns = t.number("learns", share);
  rules.knowledge.slips = t.number("slips", {0.001, 0.5, ""});
  rules.knowledge.guesses = t.number("guesses", {0.001, 0.5, ""});
  rules.known_from = t.number("known_from", share);
  static_cast<void>(t.text("source"));
}

} // namespace

tl::expected<Rules, scenario::Problems> load_rules(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "learning" / "rules.toml");
  const Table root = file.root();
  Rules rules;
  read_lines(root.table("lines"), rules);
  read_confusion(root.table("confusion"), rules);
  read_progress(root.table("progress"), rules);
  read_memory(root.table("memory"), rules);
  read_knowledge(root.table("knowledge"), rules);
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return rules;
}

} // namespace matula::learner
