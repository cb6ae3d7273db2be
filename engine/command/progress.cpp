#include "engine/learner/progress.hpp"
#include "engine/assets/world.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"
#include "engine/learner/progress_json.hpp"

#include <ctime>
#include <fmt/format.h>
#include <fmt/ostream.h>
#include <ostream>

namespace matula::command {
namespace {

constexpr double percent = 100;

void print_skill(const learner::SkillProgress& skill, std::ostream& out) {
  fmt::print(out,
             "  {}: {} of {} right; a middling unknown {:.0f} % (ability {:+.1f}, give or take {:.1f}){}\n",
             skill.skill, skill.right, skill.answers, percent * skill.chance, skill.ability.mean,
             skill.ability.sd, skill.mastered ? "; held" : "");
  if (skill.graded) {
    const auto& g = *skill.graded;
    fmt::print(out,
               "    {} readings: {:.0f} % on the word, {:.0f} % within one, {} findings missed; {:.0f} of "
               "1000, of which "
               "\"{}\" for every tube would have had {:.0f}: skill {:.2f}\n",
               g.readings, percent * g.exact, percent * g.within_one, g.missed, g.mean, g.constant,
               g.constant_mean, g.skill);
  }
  fmt::print(out, "    {}\n", skill.trend.sentence);
}

void print_lines(const learner::GroupLines& group, std::ostream& out) {
  fmt::print(out, "  {}: {} reading{}", group.title, group.readings, group.readings == 1 ? "" : "s");
  if (!group.shift) {
    fmt::print(out, ", too few to tell\n");
    return;
  }
  fmt::print(out, ", shift {:+.2f} ({:+.2f} to {:+.2f}) grades, unsteadiness {:.2f}\n", group.shift->value,
             group.shift->low, group.shift->high, group.spread);
  for (const auto& line : group.lines) {
    fmt::print(out, "    {} | {}: {:.2f} ({:.2f} to {:.2f}), reference {:.1f}\n", line.below, line.above,
               line.own.value, line.own.low, line.own.high, line.reference);
    fmt::print(out, "{}", line.sentence.empty() ? "" : "      " + line.sentence + "\n");
  }
  fmt::print(out, "{}", group.sentence.empty() ? "" : "    " + group.sentence + "\n");
}

void print_rule(const learner::RuleKept& rule, std::ostream& out) {
  fmt::print(out, "  {}, {}: met {} times, recalled now with {:.0f} %{}{}\n", rule.skill, rule.rule, rule.met,
             percent * rule.recall, rule.due ? "; due" : "", rule.held ? "; held" : "");
}

void print(const learner::Progress& progress, std::ostream& out) {
  out << "What to change tomorrow\n";
  for (const auto& sentence : progress.tomorrow) {
    out << "  " << sentence << '\n';
  }
  out << (progress.skills.empty() ? "" : "\nSkills\n");
  for (const auto& skill : progress.skills) {
    print_skill(skill, out);
  }
  out << (progress.lines.empty() ? "" : "\nWhere you draw the lines, in grades\n");
  for (const auto& group : progress.lines) {
    print_lines(group, out);
  }
  for (const auto& swap : progress.swaps) {
    fmt::print(out, "{}", swap.sentence.empty() ? "" : "    " + swap.sentence + "\n");
  }
  out << (progress.rules.empty() ? "" : "\nRules\n");
  for (const auto& rule : progress.rules) {
    print_rule(rule, out);
  }
}

} // namespace

int run_progress(const Progress& asked, std::ostream& out, std::ostream& err) {
  const auto rules = learner::load_rules(assets::folder());
  const auto book = scoring::load_rulebook(assets::folder());
  if (!rules || !book) {
    err << scenario::to_text(!rules ? rules.error() : book.error()) << '\n';
    return exit_bad_input;
  }
  std::error_code ignored;
  if (!std::filesystem::is_regular_file(asked.record, ignored)) {
    err << asked.record << ": found no such file; expected a learner's record\n";
    return exit_bad_input;
  }
  const auto record = learner::load(asked.record);
  if (!record.problems.empty()) {
    err << scenario::to_text(record.problems) << "\nThese lines are left out.\n";
  }
  const auto now_s = static_cast<std::int64_t>(std::time(nullptr));
  const auto progress = learner::progress_of(record.answers, book->tests, *rules, now_s);
  if (asked.json) {
    out << learner::to_json(progress) << '\n';
  } else {
    print(progress, out);
  }
  return exit_good;
}

} // namespace matula::command
