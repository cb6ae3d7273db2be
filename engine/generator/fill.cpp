#include "engine/generator/fill.hpp"

#include <array>
#include <cmath>
#include <stdexcept>

namespace matula::generator {

namespace {

std::string lookup(const std::string& key, const Person& person) {
  const std::array<std::pair<const char*, std::string>, 12> known{{
      {"given", person.given},
      {"surname", person.surname},
      {"age", person.age},
      {"ward", person.ward},
      {"he", person.female ? "she" : "he"},
      {"He", person.female ? "She" : "He"},
      {"him", person.female ? "her" : "him"},
      {"his", person.female ? "her" : "his"},
      {"His", person.female ? "Her" : "His"},
      {"delay", person.delay},
      {"passed", person.passed},
      {"received", person.received},
  }};
  for (const auto& [name, words] : known) {
    if (key == name) {
      return words;
    }
  }
  throw std::invalid_argument("a pattern's story asks for {" + key + "}, which is no word about a patient");
}

} // namespace

Person draw_person(const Pattern& pattern, const People& people, const Luck& luck) {
  const Who& who = pattern.who;
  Person person;
  person.female = who.sex == "female" || (who.sex == "any" && luck.pick("sex", 2) == 0);
  const std::vector<std::string>& given = person.female ? people.female : people.male;
  person.given = given[luck.pick("given name", given.size())];
  person.surname = people.surnames[luck.pick("surname", people.surnames.size())];
  const auto years = static_cast<std::size_t>(who.oldest - who.youngest) + 1;
  const auto age = static_cast<long>(who.youngest) + static_cast<long>(luck.pick("age", years));
  person.age = std::to_string(age) + (who.age_unit == "years" ? "" : " " + who.age_unit);
  person.age_sex = person.age + (person.female ? ", female" : ", male") +
                   (who.age_note.empty() ? "" : ", " + who.age_note);
  person.ward = who.wards[luck.pick("ward", who.wards.size())];
  return person;
}

std::string fill(const std::string& words, const Person& person) {
  std::string filled;
  std::size_t at = 0;
  while (at < words.size()) {
    const std::size_t open = words.find('{', at);
    const std::size_t close = open == std::string::npos ? open : words.find('}', open);
    if (close == std::string::npos) {
      break;
    }
    filled += words.substr(at, open - at) + lookup(words.substr(open + 1, close - open - 1), person);
    at = close + 1;
  }
  return filled + words.substr(at);
}

} // namespace matula::generator
