#include "engine/generator/handing.hpp"

#include "engine/generator/pattern.hpp"
#include "engine/reception/book.hpp"
#include "engine/reception/delivery.hpp"
#include "engine/scenario/quantity.hpp"

#include <algorithm>

namespace matula::generator {

namespace {

constexpr double longest_min = 7 * 24 * 60;
constexpr double most_lux = 100000;

std::vector<std::string> bottles_of(const reception::Book& book) {
  std::vector<std::string> bottles;
  for (const reception::Word& word : book.words.at("preservative")) {
    bottles.insert(bottles.end(), word.bottles.begin(), word.bottles.end());
  }
  return bottles;
}

std::vector<std::string> with(std::vector<std::string> words, const char* more) {
  words.emplace_back(more);
  return words;
}

void read_passed(const strict::Table& table, Handing& handing) {
  handing.passed = table.texts_or_none("passed");
  const bool clocks = std::all_of(handing.passed.begin(), handing.passed.end(), [](const std::string& time) {
    return reception::clock_from_text(time).has_value();
  });
  if (handing.passed.empty() || !clocks) {
    table.complain("passed", "clock times to choose from, as [\"07:10\", \"07:40\"]");
    handing.passed = {"08:00"};
  }
}

void read_delay(const strict::Table& table, const Way& way, Handing& handing) {
  if (way.stretches.empty()) {
    handing.delay_min = read_measured(table, "delay_min", {0, longest_min, "min"});
  } else if (table.has("delay_min")) {
    table.complain("delay_min", "nothing: the legs of [[specimen.leg]] say how long it was on the way");
  }
}

/// The label says what was put in, unless the pattern means it to lie.
void read_preservative(const strict::Table& table, const Way& way, const reception::Book& book,
                       Handing& handing) {
  handing.preservative = way.put_in.empty() ? "none" : book.preservative_in(way.put_in.front().bottle);
  const std::string written = table.word_or("preservative", book.keys("preservative"), handing.preservative);
  handing.preservative_mislabelled = table.boolean_or("preservative_mislabelled", false);
  if ((written != handing.preservative) != handing.preservative_mislabelled) {
    table.complain("preservative", "what [[specimen.preservative]] puts in, '" + handing.preservative +
                                       "' (it may be left out); or another together with "
                                       "preservative_mislabelled = true");
  }
  handing.preservative = written;
}

void read_faults(const strict::Table& table, const reception::Book& book, Handing& handing) {
  const auto keep = [&](const char* key, const std::string& word, const char* usual) {
    if (word != usual) {
      handing.words.emplace_back(key, word);
    }
  };
  keep("label", table.word_or("label", {"container", "lid", "none"}, "container"), "container");
  keep("label_name", table.text_or("label_name", ""), "");
  keep("label_number", table.text_or("label_number", ""), "");
  keep("contamination", table.word_or("contamination", book.keys("contamination"), "none"), "none");
  keep("remark", table.text_or("remark", ""), "");
  if (table.boolean_or("leaking", false)) {
    handing.flags.emplace_back("leaking", true);
  }
  if (!table.boolean_or("replaceable", true)) {
    handing.flags.emplace_back("replaceable", false);
  }
}

} // namespace

Way read_way(const strict::Table& specimen) {
  Way way;
  for (const strict::Table& row : specimen.tables_or_none("leg")) {
    Stretch stretch;
    stretch.minutes = read_measured(row, "minutes", {0, longest_min, "min"});
    stretch.temperature_c = read_measured(row, "temperature_c", {0, 45, "C"});
    stretch.open = row.boolean_or("open", false);
    stretch.lux = row.number_or("light_lux", {0, most_lux, "lx"}, 0);
    way.stretches.push_back(stretch);
  }
  const auto& book = reception::shipped_book();
  for (const strict::Table& row : specimen.tables_or_none("preservative")) {
    PutIn put;
    put.bottle = row.word("bottle", book ? bottles_of(*book) : std::vector<std::string>{});
    put.dose_per_100_ml = row.text("dose_per_100_ml");
    if (!scenario::split_quantity(put.dose_per_100_ml)) {
      row.complain("dose_per_100_ml", "a number with its unit, as \"0.1 g\" or \"0.5 mL\"");
    }
    put.at_min = row.number_or("at_min", {0, longest_min, "min"}, 0);
    way.put_in.push_back(put);
  }
  return way;
}

std::optional<Handing> read_handing(const strict::Table& root, const Way& way) {
  const auto table = root.table_if_any("collection");
  const auto& book = reception::shipped_book();
  if (!table || !book) {
    return std::nullopt;
  }
  Handing handing;
  handing.number = table->text("number");
  handing.kind = table->word("kind", with(book->keys("kind"), "midstream"));
  handing.requests = table->words("request", book->keys("request"));
  if (table->has("request") && handing.requests.empty()) {
    table->complain("request", "at least one thing that is asked for");
  }
  handing.container = table->word("container", book->keys("container"));
  handing.storage = table->word_or("storage", {"room", "refrigerated"}, "room");
  handing.time_written = table->boolean_or("time_written", true);
  read_passed(*table, handing);
  read_delay(*table, way, handing);
  read_preservative(*table, way, *book, handing);
  read_faults(*table, *book, handing);
  return handing;
}

} // namespace matula::generator
