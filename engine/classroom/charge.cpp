#include "engine/classroom/charge.hpp"

#include "engine/scoring/tube_facts.hpp"

namespace matula::classroom {
namespace {

using scoring::Ledger;

bool broken(const scoring::Rule& rule, const scoring::Facts& facts) {
  const auto fact = facts.find(rule.fact);
  return fact != facts.end() && (fact->second < rule.min || fact->second > rule.max);
}

/// The line at which each item was last written and taken.
std::map<std::string, std::size_t> written_at(const Recording& recording) {
  std::map<std::string, std::size_t> lines;
  for (std::size_t i = 0; i < recording.events.size(); ++i) {
    const auto* record = std::get_if<sitting::Record>(&recording.events[i].what);
    if (record != nullptr && !recording.lines[i].refused) {
      lines[record->item] = i;
    }
  }
  return lines;
}

/// The line itself, or where only time went by, the last one before it in which the student did something.
std::size_t deed_at(const Recording& recording, std::size_t line) {
  const auto waits = [&](std::size_t i) {
    const auto* action = std::get_if<bench::Action>(&recording.events[i].what);
    return action != nullptr && std::holds_alternative<bench::Wait>(*action);
  };
  std::size_t at = line;
  while (at > 0 && waits(at)) {
    --at;
  }
  return waits(at) ? line : at;
}

/// "heat" for "process.heat" and for any rule of the test.
std::string part_of(const std::string& item, const scoring::Rulebook& rules) {
  const std::string key = item.substr(std::string("process.").size());
  for (const auto& rule : rules.rules) {
    if (rule.key == key) {
      return rule.part;
    }
  }
  return key;
}

/// Lines whose writing closes a part of the work.
std::vector<std::string> closing_items(const std::string& part, const scoring::Rulebook& rules) {
  if (part == "look") {
    return {"colour", "clarity", "odour"};
  }
  if (part == "gravity") {
    return {"sg.reading"};
  }
  const auto* test = rules.find_test(part);
  return test == nullptr ? std::vector<std::string>{} : std::vector<std::string>{test->item()};
}

struct Place {
  std::size_t line = 0;
  const char* how = "";
};

std::optional<Place> place_of(const scoring::Mark& mark, const std::map<std::string, std::size_t>& written,
                              const scoring::Rulebook& rules, const SafetyLines& safety) {
  if (mark.ledger == Ledger::Safety) {
    const std::string key = mark.item.substr(std::string("safety.").size());
    const auto since = mark.earned < mark.possible ? safety.since(key) : std::nullopt;
    return since ? std::optional<Place>({*since, "from this line on"}) : std::nullopt;
  }
  std::vector<std::string> items{mark.item};
  const char* how = "for what was written here";
  if (mark.ledger == Ledger::Process) {
    items = closing_items(part_of(mark.item, rules), rules);
    how = "judged as it stood when this was written";
  }
  std::optional<Place> place;
  for (const auto& item : items) {
    const auto found = written.find(item);
    if (found != written.end() && (!place || place->line < found->second)) {
      place = Place{found->second, how};
    }
  }
  return place;
}

} // namespace

void SafetyLines::look(std::size_t lines, const bench::State& state, const scoring::Watch& watch) {
  const auto facts = scoring::safety_facts(state, watch);
  for (const auto& rule : rules_.safety) {
    if (!broken(rule, facts)) {
      since_.erase(rule.key);
    } else {
      since_.try_emplace(rule.key, lines > 0 ? lines - 1 : 0);
    }
  }
}

std::optional<std::size_t> SafetyLines::since(const std::string& rule) const {
  const auto found = since_.find(rule);
  return found == since_.end() ? std::nullopt : std::optional(found->second);
}

void charge_marks(Recording& recording, const scoring::Rulebook& rules, const scoring::Report& report,
                  const SafetyLines& safety) {
  const auto written = written_at(recording);
  for (const auto& mark : report.marks) {
    const auto place = place_of(mark, written, rules, safety);
    if (place) {
      recording.lines[deed_at(recording, place->line)].marks.push_back({mark, place->how});
    } else {
      recording.elsewhere.push_back({mark, ""});
    }
  }
}

} // namespace matula::classroom
