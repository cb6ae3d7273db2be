#include "engine/drafting/form_sections.hpp"

#include "engine/assets/world.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/drafting/field_rows.hpp"
#include "engine/drafting/list_text.hpp"
#include "engine/drafting/substances.hpp"
#include "engine/reception/book.hpp"
#include "engine/strict/edit.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::drafting {

namespace {

using reception::Book;

std::vector<std::string> listed(const std::string& text, const char* path) {
  return words_of_list(strict::value_at(text, strict::path_from(path)).value_or(""));
}

bool holds(const std::vector<std::string>& words, const std::string& word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// What a person calls the word that stands there comes before what the row is for.
void say_label(Row& row, const std::string& list, const Book& book) {
  const bool known = holds(book.keys(list), row.value);
  row.about = (known ? book.label(list, row.value) + "; " : "") + row.about;
}

/// "copper ii falls to half in 400 days"
std::string decay_words(const std::string& bottle, const assets::World& world) {
  std::string words;
  for (const auto& decay : world.bottle_decays) {
    if (decay.reagent == bottle) {
      words += fmt::format("{}{} falls to half in {:g} days", words.empty() ? "" : ", ",
                           spoken(world.catalogue.species[decay.loses].key), decay.half_life_days);
    }
  }
  return words.empty() ? "keeps for ever" : words;
}

} // namespace

void add_counter(Form& form, const strict::Table& root, const std::string& text, const author::Shelf& shelf) {
  const auto table = root.table_if_any("collection");
  const auto& book = reception::shipped_book();
  form.groups.push_back({"counter", "What lies on the counter", {}});
  form.groups.push_back({"voids", "The voids of the day", {}});
  form.counter = table.has_value();
  if (!table || !book) {
    return;
  }
  const auto asked = listed(text, "collection.request");
  for (const std::string& key : book->keys("request")) {
    form.requests.push_back({key, book->label("request", key), "", holds(asked, key)});
  }
  auto& rows = (form.groups.end() - 2)->rows;
  rows = rows_of(author::collection_fields(shelf), "collection", text);
  for (Row& row : rows) {
    const std::string key = row.path.substr(row.path.find('.') + 1);
    if (holds({"kind", "container", "preservative", "contamination"}, key)) {
      say_label(row, key, *book);
    }
  }
  const auto voids = table->tables_or_none("void").size();
  for (std::size_t i = 0; i < voids; ++i) {
    auto more = rows_of(author::void_fields(*shelf.limits), fmt::format("collection.void[{}]", i), text);
    for (Row& row : more) {
      row.label = fmt::format("{}: {}", i + 1, row.label);
    }
    more.front().removable = true;
    auto& all = form.groups.back().rows;
    all.insert(all.end(), more.begin(), more.end());
  }
}

void add_bottle_ages(Form& form, const strict::Table& root, const std::string& text,
                     const author::Shelf& shelf) {
  form.groups.push_back({"ages", "How long ago each bottle was opened", {}});
  auto bottles = listed(text, "bench.reagents");
  const auto bench = root.table_if_any("bench");
  const auto ages = bench ? bench->table_if_any("bottle_age") : std::nullopt;
  for (const std::string& key : ages ? ages->keys() : std::vector<std::string>{}) {
    if (!holds(bottles, key)) {
      bottles.push_back(key); // Wrong, and to be seen.
    }
  }
  const strict::Range& range = shelf.limits->ranges.at("bottle_age");
  for (const std::string& bottle : bottles) {
    Row row;
    row.path = "bench.bottle_age." + bottle;
    const auto* reagent = shelf.world->catalogue.find_reagent(bottle);
    row.label = reagent == nullptr ? spoken(bottle) : reagent->label;
    row.entry = Entry::Quantity;
    row.value = typed_at(text, row.path);
    row.unit = range.unit;
    row.range = fmt::format("{:g} to {:g} {}", range.low, range.high, range.unit);
    row.about = decay_words(bottle, *shelf.world) + "; fresh when nothing is written";
    row.can_step = row.optional = true;
    form.groups.back().rows.push_back(std::move(row));
  }
}

void add_rules(Form& form, const std::string& text, const author::Shelf& shelf) {
  form.groups.push_back({"rules", "Rules the laboratory has written down",
                         rows_of(author::rules_fields(*shelf.limits), "laboratory_rules", text)});
}

void add_marks(Form& form, const std::string& text, const author::Shelf& shelf) {
  form.groups.push_back(
      {"weights", "What things are worth", rows_of(author::weights_fields(*shelf.limits), "weights", text)});
  form.groups.push_back({"tolerances", "How near a figure must come",
                         rows_of(author::tolerances_fields(*shelf.limits), "tolerances", text)});
  form.groups.push_back({"marking", "What is marked otherwise than in the house",
                         rows_of(author::marking_fields(), "marking", text)});
}

} // namespace matula::drafting
