#include "engine/practice/blueprint.hpp"

#include "engine/practice/sum.hpp"
#include "engine/practice/unknown.hpp"
#include "engine/scoring/standards.hpp"
#include "engine/strict/disk.hpp"
#include "engine/strict/table.hpp"

#include <algorithm>

namespace matula::practice {

namespace {

using strict::Table;

constexpr int most_unknowns = 60;

struct Reader {
  const Rules& rules;
  const scoring::Standards& standards;

  /// Words that every one of the tests has.
  std::vector<std::string> grades_of(const std::vector<std::string>& tests) const {
    std::vector<std::string> words;
    for (const std::string& key : tests) {
      const auto& own = standards.rules.find_test(key)->words;
      if (words.empty()) {
        words = own;
      }
      words.erase(
          std::remove_if(words.begin(), words.end(),
                         [&](const auto& word) { return std::count(own.begin(), own.end(), word) == 0; }),
          words.end());
    }
    return words;
  }

  std::vector<std::string> traps(const Table& row, Skill skill) const {
    std::vector<std::string> allowed;
    if (has_tubes(skill)) {
      for (const Urine& urine : rules.urines) {
        allowed.push_back(urine.key);
      }
    } else if (skill == Skill::Meniscus) {
      for (const auto& [key, span] : rules.floats.temperature_c) {
        allowed.push_back(key);
      }
    } else {
      return {"plain"};
    }
    return row.has("traps") ? row.words("traps", allowed) : std::vector<std::string>{allowed.front()};
  }

  std::vector<std::string> fault_keys() const {
    std::vector<std::string> keys;
    for (const auto& [fault, difficulty] : rules.difficulty.delivery) {
      keys.push_back(fault);
    }
    return keys;
  }

  Part part(const Table& row) const {
    std::vector<std::string> skills;
    for (const Skill skill : all_skills) {
      skills.push_back(to_word(skill));
    }
    Part part;
    part.skill = *skill_from_word(row.word("skill", skills));
    if (has_tubes(part.skill)) {
      part.tests = row.words("tests", rules.tests_of(part.skill));
      part.what = row.words("grades", grades_of(part.tests));
    } else if (part.skill == Skill::Corrections) {
      part.what = row.words("steps", all_step_sets());
    } else if (part.skill == Skill::Reception) {
      part.what = row.words("faults", fault_keys());
    } else {
      part.what = {"float"};
    }
    part.traps = traps(row, part.skill);
    if (!is_of_rules(part.skill)) {
      part.from_line =
          row.number_or("from_line", {0, 0.5, "grades, or divisions of a float's scale"}, part.from_line);
    }
    part.count = row.integer_or("count", {1, most_unknowns, "of each"}, 1);
    return part;
  }
};

} // namespace

int Blueprint::size() const {
  int sum = 0;
  for (const Part& part : parts) {
    const auto cells = std::max<std::size_t>(part.tests.size(), 1) * part.what.size() * part.traps.size();
    sum += static_cast<int>(cells) * part.count;
  }
  return sum;
}

tl::expected<Blueprint, scenario::Problems>
read_blueprint(const std::filesystem::path& path, const Rules& rules, const scoring::Standards& standards) {
  strict::File file(path);
  const Table root = file.root();
  Blueprint blueprint;
  blueprint.key = path.stem().string();
  blueprint.title = root.text("title");
  blueprint.about = root.text("about");
  blueprint.minutes = root.integer_or("minutes", {0, 240, "min; 0 for no limit"}, 0);
  for (const Table& row : root.tables("part")) {
    blueprint.parts.push_back(Reader{rules, standards}.part(row));
  }
  if (const int size = blueprint.size(); size > most_unknowns) {
    root.complain("part", "at most " + std::to_string(most_unknowns) + " unknowns in all; these make " +
                              std::to_string(size));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return blueprint;
}

std::vector<std::filesystem::path> blueprint_files(const std::filesystem::path& folder) {
  return strict::files_in(folder, ".toml");
}

} // namespace matula::practice
