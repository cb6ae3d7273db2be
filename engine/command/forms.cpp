#include "engine/author/forms.hpp"

#include "engine/author/sheet.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/replayed.hpp"
#include "engine/command/verbs.hpp"
#include "engine/command/write_file.hpp"
#include "engine/generator/generate.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <ostream>

namespace matula::command {
namespace {

/// A student's folder must be a plain name.
bool is_plain(const std::string& name) {
  return !name.empty() && name.front() != '.' && std::all_of(name.begin(), name.end(), [](char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
           c == '_' || c == '.';
  });
}

std::vector<std::string> students_of(const Forms& asked) {
  if (!asked.students.empty()) {
    return asked.students;
  }
  std::vector<std::string> students;
  for (int i = 1; i <= asked.count; ++i) {
    students.push_back(fmt::format("{:02}", i));
  }
  return students;
}

/// The teacher's key: what every unknown shows by the book, and how hard it is.
nlohmann::json key_of(const author::Plan& plan, const std::vector<author::Form>& forms) {
  auto all = nlohmann::json::array();
  for (const auto& form : forms) {
    auto unknowns = nlohmann::json::array();
    for (const auto& unknown : form.unknowns) {
      nlohmann::json tests;
      for (const auto& shown : unknown.shown) {
        tests[shown.test] = {{"word", shown.word},
                             {"intensity", shown.intensity.value_or(0)},
                             {"from_line", shown.from_line.value_or(0)}};
      }
      unknowns.push_back({{"unknown", unknown.key},
                          {"number", unknown.number},
                          {"tests", tests},
                          {"specific_gravity", unknown.gravity},
                          {"difficulty", unknown.difficulty}});
    }
    all.push_back({{"student", form.student}, {"difficulty", form.difficulty}, {"unknowns", unknowns}});
  }
  return {{"plan", plan.key}, {"tolerance", plan.tolerance}, {"forms", all}};
}

bool write_all(const std::filesystem::path& folder, const author::Plan& plan,
               const std::vector<author::Form>& forms, const author::Shelf& shelf, std::ostream& err) {
  for (const auto& form : forms) {
    for (const auto& unknown : form.unknowns) {
      if (!write_file(folder / form.student / (unknown.key + ".toml"), unknown.text, err)) {
        return false;
      }
    }
  }
  return write_file(folder / "forms.html", author::printable_sheet(plan, forms, shelf), err) &&
         write_file(folder / "key.html", author::printable_key(plan, forms), err) &&
         write_file(folder / "key.json", key_of(plan, forms).dump(2) + "\n", err);
}

} // namespace

int run_forms(const Forms& asked, std::ostream& out, std::ostream& err) {
  const auto folder = assets::folder();
  const auto ground = load_ground();
  if (!ground) {
    err << scenario::to_text(ground.error()) << '\n';
    return exit_bad_input;
  }
  const auto shelf = author::load_shelf(*ground->world, ground->standards, folder);
  const auto rules = practice::load_rules(folder);
  const auto people = generator::read_people(generator::people_file(folder));
  if (!shelf || !rules || !people) {
    err << scenario::to_text(!shelf ? shelf.error() : !rules ? rules.error() : people.error()) << '\n';
    return exit_bad_input;
  }
  const auto plan = author::read_plan(asked.plan, **shelf);
  if (!plan) {
    err << scenario::to_text(plan.error()) << '\n';
    return exit_bad_input;
  }
  const auto students = students_of(asked);
  for (const auto& student : students) {
    if (!is_plain(student)) {
      err << student << ": a student is a number or a pseudonym of letters, digits, - and _\n";
      return exit_wrong_call;
    }
  }
  const auto told = [&err](std::size_t done, std::size_t of) {
    err << fmt::format("\r{} of {} unknowns", done, of) << std::flush;
  };
  const auto forms = author::make_forms({shelf->get(), &*rules, &*people}, *plan, students,
                                        static_cast<std::uint64_t>(asked.seed), told);
  err << '\n';
  if (!forms) {
    err << fmt::format("{}\n", fmt::join(forms.error(), "\n"));
    return exit_bad_input;
  }
  if (!write_all(asked.output, *plan, *forms, **shelf, err)) {
    return exit_bad_input;
  }
  if (asked.json) {
    out << key_of(*plan, *forms).dump(2) << '\n';
    return exit_good;
  }
  for (const auto& form : *forms) {
    out << fmt::format("{}: {} unknowns, difficulty {:+.2f}\n", form.student, form.unknowns.size(),
                       form.difficulty);
  }
  out << (std::filesystem::path(asked.output) / "forms.html").string() << '\n';
  return exit_good;
}

} // namespace matula::command
