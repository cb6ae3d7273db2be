// Whether what form and label say is true of the specimen. A case may say otherwise only when it says so.
#include "engine/reception/book.hpp"
#include "engine/scenario/parts.hpp"

#include <algorithm>
#include <cmath>

namespace matula::scenario {

namespace {

using reception::Delivery;

constexpr double min_per_h = 60;

/// What was put into the container, in the words of a label.
std::vector<std::string> put_in(const specimen::Specimen& specimen, const reception::Book& book) {
  std::vector<std::string> words;
  for (const specimen::Preservative& added : specimen.preservatives) {
    const std::string word = book.preservative_in(added.reagent);
    if (!word.empty() && std::find(words.begin(), words.end(), word) == words.end()) {
      words.push_back(word);
    }
  }
  return words;
}

/// "\"thymol\"", or "\"none\"" when nothing was put in.
std::string true_label(const std::vector<std::string>& inside) {
  return "\"" + (inside.empty() ? std::string("none") : inside.front()) + "\"";
}

void check_preservative(const strict::Table& table, const Delivery& delivery,
                        const specimen::Specimen& specimen, const reception::Book& book) {
  const bool lies = table.boolean_or("preservative_mislabelled", false);
  const auto inside = put_in(specimen, book);
  const std::string& label = delivery.label_preservative;
  const bool agrees =
      label == "none" ? inside.empty() : std::find(inside.begin(), inside.end(), label) != inside.end();
  if (table.text_or("preservative", label) != label) {
    return; // No such word, which has been said already.
  }
  if (agrees && lies) {
    table.complain("preservative_mislabelled",
                   "no such line: label and [[specimen.preservative]] agree; or another preservative");
  }
  if (agrees || lies) {
    return;
  }
  table.complain("preservative",
                 "preservative = " + true_label(inside) +
                     ", which is what [[specimen.preservative]] puts in; or the bottle there; or "
                     "preservative_mislabelled = true when the label is meant to be wrong");
}

void check_hours(const strict::Table& table, const Delivery& delivery, const specimen::Specimen& specimen) {
  constexpr double allowed_min = 10;
  const bool lies = table.boolean_or("time_miswritten", false);
  const bool timed = delivery.kind != "day" && delivery.passed_min && !specimen.life.empty();
  double lived_min = specimen.stood_hours * min_per_h;
  for (const specimen::Leg& leg : specimen.life) {
    lived_min += leg.hours * min_per_h;
  }
  const double written_min = delivery.received_min - delivery.passed_min.value_or(delivery.received_min);
  const bool agrees = !timed || std::abs(written_min - lived_min) <= allowed_min;
  if (agrees && lies) {
    table.complain("time_miswritten", "no such line: the times are those of the specimen's way to the bench");
  }
  if (agrees || lies) {
    return;
  }
  const auto passed = delivery.received_min - static_cast<int>(std::lround(lived_min));
  table.complain("passed", "a time that fits the legs of the specimen, which last " +
                               std::to_string(std::lround(lived_min)) + " min" +
                               (passed >= 0 ? ": passed = \"" + reception::say_clock(passed) + "\"" : "") +
                               "; or time_miswritten = true when the form is meant to be wrong");
}

void check_storage(const strict::Table& table, const Delivery& delivery, const specimen::Specimen& specimen) {
  constexpr double cold_c = 10;
  const bool cold = std::any_of(specimen.life.begin(), specimen.life.end(),
                                [](const specimen::Leg& leg) { return leg.temperature_c <= cold_c; });
  if (delivery.storage == "refrigerated" && !specimen.life.empty() && !cold) {
    table.complain("storage", "\"room\": no leg of the specimen is in the cold");
  }
}

} // namespace

void check_collection(const strict::Table& table, const Delivery& delivery,
                      const specimen::Specimen& specimen) {
  const auto& book = reception::shipped_book();
  if (book) {
    check_preservative(table, delivery, specimen, *book);
  }
  check_hours(table, delivery, specimen);
  check_storage(table, delivery, specimen);
}

} // namespace matula::scenario
