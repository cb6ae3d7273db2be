#include "engine/author/wish.hpp"

#include "engine/assets/world.hpp"
#include "engine/scoring/numeric.hpp"
#include "engine/strict/nearest.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace matula::author {

namespace {

constexpr const char* says_gravity = "sg";

std::string trimmed(const std::string& words) {
  const auto first = words.find_first_not_of(' ');
  return first == std::string::npos ? "" : words.substr(first, words.find_last_not_of(' ') - first + 1);
}

bool has(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// Reads one wish after another and keeps what was wrong.
class Reader {
public:
  explicit Reader(const Shelf& shelf) : shelf_(shelf) {}

  void read(const std::string& words) {
    const auto equals = words.find('=');
    const std::string what = trimmed(words.substr(0, equals));
    const std::string value = equals == std::string::npos ? "" : trimmed(words.substr(equals + 1));
    if (value.empty()) {
      wrong.push_back(
          fmt::format("\"{}\": write what is wished as NAME=VALUE, such as heat=2+ or sg=1.018", words));
    } else if (what == says_gravity || what == "ph") {
      number(what, value);
    } else if (what == "colour") {
      wish.colour = word(what, value, colour_words(shelf_));
    } else if (what == "clarity") {
      wish.clarity = word(what, value, clarity_words(shelf_));
    } else if (const auto place = place_of(what);
               place && shelf_.standards->rules.find_test(what) == nullptr) {
      amount(what, *place, value);
    } else {
      test(what, value);
    }
  }

  Wish wish;
  std::vector<std::string> wrong;

private:
  void number(const std::string& what, const std::string& value) {
    const auto read = scoring::number_from_text(value);
    const bool gravity = what == says_gravity;
    const double low = gravity ? 1.001 : shelf_.limits->ranges.at("ph").low;
    const double high = gravity ? 1.060 : shelf_.limits->ranges.at("ph").high;
    if (!read || *read < low || *read > high) {
      wrong.push_back(fmt::format("{}={}: a number from {} to {}", what, value, low, high));
      return;
    }
    (gravity ? wish.gravity : wish.ph) = *read;
  }

  std::string word(const std::string& what, const std::string& value,
                   const std::vector<std::string>& allowed) {
    if (!has(allowed, value)) {
      wrong.push_back(fmt::format("{}={}: {}", what, value, strict::suggestion(value, allowed)));
    }
    return value;
  }

  /// "albumin", "cells.leucocytes"; nothing for what is no substance.
  [[nodiscard]] std::optional<Place> place_of(const std::string& name) const {
    const auto dot = name.find('.');
    const std::string section = dot == std::string::npos ? "" : name.substr(0, dot);
    const std::string key = dot == std::string::npos ? name : name.substr(dot + 1);
    for (const char* one : {"dissolved", "solids", "cells"}) {
      const Place place{one, key};
      if ((section.empty() || section == one) && most_of(place, *shelf_.limits, shelf_.world->catalogue)) {
        return place;
      }
    }
    return std::nullopt;
  }

  void amount(const std::string& what, const Place& place, const std::string& value) {
    const auto read = read_amount(value, place, *shelf_.limits, shelf_.world->catalogue);
    if (!read) {
      wrong.push_back(fmt::format("{}={}: {}", what, value, read.error()));
      return;
    }
    wish.amounts.push_back({place, *read});
  }

  void test(const std::string& key, const std::string& value) {
    const auto* rule = shelf_.standards->rules.find_test(key);
    if (rule == nullptr || rule->result != procedure::Result::Word) {
      std::vector<std::string> keys{says_gravity, "ph", "colour", "clarity"};
      for (const auto& one : shelf_.standards->rules.tests) {
        if (one.result == procedure::Result::Word) {
          keys.push_back(one.key);
        }
      }
      wrong.push_back(
          fmt::format("{}: no test that ends in a word; {}", key, strict::suggestion(key, keys, 60)));
      return;
    }
    const auto by = value.find(" by ");
    const auto grade = rule->grade(trimmed(value.substr(0, by)));
    if (!grade) {
      wrong.push_back(fmt::format("{}={}: its words are {}", key, value, fmt::join(rule->words, ", ")));
      return;
    }
    Want want;
    want.grade = static_cast<std::size_t>(*grade);
    if (by != std::string::npos) {
      want.by = Place{"dissolved", trimmed(value.substr(by + 4))};
      if (!most_of(*want.by, *shelf_.limits, shelf_.world->catalogue)) {
        wrong.push_back(fmt::format("{}={}: no substance a scenario may list: {}", key, value, want.by->key));
      }
    }
    wish.tests[key] = want;
  }

  const Shelf& shelf_;
};

} // namespace

tl::expected<Wish, std::vector<std::string>> wish_from(const std::vector<std::string>& words,
                                                       const Shelf& shelf) {
  Reader reader(shelf);
  for (const auto& one : words) {
    reader.read(one);
  }
  if (!reader.wrong.empty()) {
    return tl::make_unexpected(std::move(reader.wrong));
  }
  return std::move(reader.wish);
}

std::optional<Place> analyte_of(const std::string& test, const Want& want, const Shelf& shelf) {
  if (want.by) {
    return want.by;
  }
  const auto named = shelf.compose.analytes.find(test);
  Place place{"dissolved", shelf.standards->recipes.at(test).ladder_species};
  place = named == shelf.compose.analytes.end() ? place : named->second;
  const bool scaled = has(shelf.compose.scaled, place.key);
  return scaled || !most_of(place, *shelf.limits, shelf.world->catalogue) ? std::nullopt
                                                                          : std::optional(place);
}

const std::vector<std::string>& clarity_words(const Shelf& shelf) {
  return shelf.standards->rules.observation.clarities;
}

std::vector<std::string> colour_words(const Shelf& shelf) {
  std::vector<std::string> words;
  for (const auto& knob : shelf.compose.colours) {
    words.push_back(knob.word);
  }
  return words;
}

} // namespace matula::author
