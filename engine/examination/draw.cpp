#include "engine/examination/halves.hpp"
#include "engine/examination/plan.hpp"
#include "engine/generator/generate.hpp"
#include "engine/scenario/halves.hpp"
#include "engine/scenario/scenario.hpp"
#include "engine/strict/file.hpp"

#include <map>
#include <optional>

namespace matula::examination {

namespace {

namespace fs = std::filesystem;
using From = PlannedCase::From;

/// Draws cases for one learner after another; patterns are read once.
class Drawer {
public:
  Drawer(const Plan& plan, const fs::path& assets, const matter::Catalogue& catalogue)
      : plan_(plan), assets_(assets), catalogue_(catalogue) {}

  seal::Maybe<CaseText> one(const PlannedCase& planned, const std::string& pseudonym,
                            const std::string& label, std::uint64_t seed) {
    CaseText made;
    made.label = label;
    const auto problems = planned.from == From::Pattern ? from_pattern(planned, seed, made)
                                                        : from_file(planned, pseudonym, seed, made);
    if (!problems.empty()) {
      return tl::make_unexpected(problems);
    }
    const auto read = scenario::parse(made.text, made.key + ".toml", catalogue_);
    if (!read) {
      return tl::make_unexpected(read.error());
    }
    if (read->seed != seed) {
      return seal::refuse(made.key + ".toml", "a scenario whose seed cannot be set",
                          "seed = 1 on a line of its own before the first [section]");
    }
    return made;
  }

private:
  scenario::Problems from_file(const PlannedCase& planned, const std::string& pseudonym, std::uint64_t seed,
                               CaseText& made) const {
    const fs::path place = plan_.folder / planned.what;
    const fs::path file = planned.from == From::Forms ? form_of(planned, pseudonym) : place;
    std::string text;
    if (!strict::read_text(file, text)) {
      return missing(planned, pseudonym, file);
    }
    made.text = with_seed(text, seed);
    made.key = planned.from == From::Forms ? place.lexically_normal().filename().string() +
                                                 (planned.unknown.empty() ? "" : "-" + planned.unknown)
                                           : file.stem().string();
    made.drawn = "file " + planned.what + ", seed " + std::to_string(seed);
    return {};
  }

  /// A learner's own file, as one is made for each, or as several are made for each by a plan.
  [[nodiscard]] fs::path form_of(const PlannedCase& planned, const std::string& pseudonym) const {
    const fs::path place = plan_.folder / planned.what;
    return planned.unknown.empty() ? place / (pseudonym + ".toml")
                                   : place / pseudonym / (planned.unknown + ".toml");
  }

  [[nodiscard]] scenario::Problems missing(const PlannedCase& planned, const std::string& pseudonym,
                                           const fs::path& file) const {
    const fs::path of_learner = plan_.folder / planned.what / pseudonym;
    const bool several =
        planned.from == From::Forms && planned.unknown.empty() && fs::is_directory(of_learner);
    return seal::problem(file.string(), "no readable file",
                         several ? "a scenario file at this place, or unknown = \"unknown-1\" beside forms "
                                   "for one of the files in " +
                                       of_learner.string()
                                 : "a scenario file at this place");
  }

  scenario::Problems from_pattern(const PlannedCase& planned, std::uint64_t seed, CaseText& made) {
    if (!people_) {
      auto people = generator::read_people(generator::people_file(assets_));
      if (!people) {
        return people.error();
      }
      people_ = std::move(*people);
    }
    auto known = patterns_.find(planned.what);
    if (known == patterns_.end()) {
      const bool own = fs::path(planned.what).extension() == ".toml";
      auto pattern = generator::read_pattern(
          own ? plan_.folder / planned.what : generator::patterns_folder(assets_) / (planned.what + ".toml"));
      if (!pattern) {
        return pattern.error();
      }
      known = patterns_.emplace(planned.what, std::move(*pattern)).first;
    }
    const auto variant = generator::generate(known->second, *people_, seed, false, catalogue_);
    if (!variant) {
      return seal::problem(planned.what, variant.error(), "a pattern whose patients are consistent");
    }
    made.text = with_seed(variant->text, seed);
    made.key = known->second.key;
    made.drawn = "pattern " + planned.what + ", seed " + std::to_string(seed);
    return {};
  }

  const Plan& plan_;
  const fs::path& assets_;
  const matter::Catalogue& catalogue_;
  std::optional<generator::People> people_;
  std::map<std::string, generator::Pattern> patterns_;
};

} // namespace

seal::Maybe<std::vector<StudentCases>> draw(const Plan& plan, const std::vector<std::string>& pseudonyms,
                                            const seal::Hash& secret, const fs::path& assets,
                                            const matter::Catalogue& catalogue) {
  Drawer drawer(plan, assets, catalogue);
  std::vector<StudentCases> students;
  for (const auto& pseudonym : pseudonyms) {
    StudentCases student{pseudonym, {}};
    for (std::size_t i = 0; i < plan.cases.size(); ++i) {
      const std::string label = "unknown-" + std::to_string(i + 1);
      auto made = drawer.one(plan.cases[i], pseudonym, label, seed_for(secret, pseudonym, label));
      if (!made) {
        return tl::make_unexpected(made.error());
      }
      student.cases.push_back(std::move(*made));
    }
    students.push_back(std::move(student));
  }
  return students;
}

seal::Maybe<std::vector<StudentCases>> bench_halves(const std::vector<StudentCases>& whole,
                                                    const matter::Catalogue& catalogue) {
  std::vector<StudentCases> halves;
  for (const auto& student : whole) {
    StudentCases half{student.pseudonym, {}};
    for (const auto& one : student.cases) {
      const auto parted = scenario::halve(one.text, one.key + ".toml");
      if (!parted) {
        return tl::make_unexpected(parted.error());
      }
      const auto read = scenario::parse_bench_half(parted->kept, one.label + ".toml", catalogue);
      if (!read) {
        return tl::make_unexpected(read.error());
      }
      half.cases.push_back({one.label, parted->kept, "", ""});
    }
    halves.push_back(std::move(half));
  }
  return halves;
}

} // namespace matula::examination
