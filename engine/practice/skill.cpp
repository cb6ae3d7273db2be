#include "engine/practice/skill.hpp"

namespace matula::practice {

namespace {

struct Row {
  const char* word;
  const char* title;
  const char* about;
};

// In the order of the enumeration.
constexpr std::array<Row, 6> rows{{
    {"turbidity", "Clouds of protein",
     "Grade the cloud of a heated tube or of one with sulfosalicylic acid."},
    {"copper", "Colours of copper", "Grade Benedict's tube by its colour and deposit."},
    {"ring", "Rings", "Grade the ring of Heller's and of Rothera's test."},
    {"meniscus", "Reading the float", "Bring the eye level with the surface and read the urinometer."},
    {"corrections", "Corrections", "Correct a reading line by line: float, temperature, protein, glucose."},
    {"reception", "At the counter", "Accept, accept with a qualification, or refuse; and say why."},
}};

const Row& row(Skill skill) {
  return rows[static_cast<std::size_t>(skill)];
}

} // namespace

std::string to_word(Skill skill) {
  return row(skill).word;
}

std::optional<Skill> skill_from_word(std::string_view word) {
  for (const Skill skill : all_skills) {
    if (word == row(skill).word) {
      return skill;
    }
  }
  return std::nullopt;
}

std::string title_of(Skill skill) {
  return row(skill).title;
}

std::string about(Skill skill) {
  return row(skill).about;
}

bool has_tubes(Skill skill) {
  return skill == Skill::Turbidity || skill == Skill::Copper || skill == Skill::Ring;
}

bool is_of_rules(Skill skill) {
  return skill == Skill::Corrections || skill == Skill::Reception;
}

} // namespace matula::practice
