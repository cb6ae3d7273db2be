// The counter in the form: making one, what its form asks for, the voids of a day.
#include "engine/drafting/entry.hpp"
#include "engine/drafting/list_text.hpp"
#include "engine/drafting/studio_impl.hpp"
#include "engine/drafting/substances.hpp"
#include "engine/reception/book.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::drafting {

namespace {

constexpr const char* requests_at = "collection.request";
constexpr int min_per_h = 60;

std::string in_toml(const std::string& words) {
  return toml_of(Entry::Line, words, "");
}

/// Minutes from the void to the bench; half an hour for a specimen without a way.
int way_min(const specimen::Specimen& specimen) {
  constexpr double usual_h = 0.5;
  double hours = specimen.stood_hours + (specimen.life.empty() ? usual_h : 0);
  for (const auto& leg : specimen.life) {
    hours += leg.hours;
  }
  return static_cast<int>(std::lround(hours * min_per_h));
}

/// What the label has to say of what was put in: the first there is a word for.
std::string put_in(const specimen::Specimen& specimen, const reception::Book& book) {
  for (const auto& added : specimen.preservatives) {
    if (const std::string word = book.preservative_in(added.reagent); !word.empty()) {
      return word;
    }
  }
  return "none";
}

/// A delivery in order, true of the specimen.
std::vector<author::Change> plain_counter(const specimen::Specimen& specimen, const reception::Book& book) {
  constexpr int passed_min = 7 * min_per_h + 40;
  const std::string preservative = put_in(specimen, book);
  std::vector<author::Change> changes{
      {"collection.number", in_toml("SB 10 001")},
      {"collection.request", "[" + in_toml(book.keys("request").front()) + "]"},
      {"collection.kind", in_toml(book.keys("kind").front())},
      {"collection.container", in_toml(book.keys("container").front())},
      {"collection.passed", in_toml(reception::say_clock(passed_min))},
      {"collection.received", in_toml(reception::say_clock(passed_min + way_min(specimen)))}};
  if (preservative != "none") {
    changes.push_back({"collection.preservative", in_toml(preservative)});
  }
  return changes;
}

/// What a case needs besides voids for the sums of a day, where it is not written yet.
std::vector<author::Change> plain_day(const std::string& text, const scenario::Scenario* read) {
  const bool female = read != nullptr && read->patient.age_sex.find("female") != std::string::npos;
  std::vector<author::Change> changes{{"collection.kind", in_toml("day")}};
  const auto unless_there = [&](const char* path, const std::string& words) {
    if (typed_at(text, path).empty()) {
      changes.push_back({path, in_toml(words)});
    }
  };
  unless_there("collection.start", "07:00");
  unless_there("collection.stop", "07:00 day 2");
  unless_there("collection.weight", "70 kg");
  unless_there("collection.sex", female ? "female" : "male");
  const auto stop = reception::clock_from_text(typed_at(text, "collection.stop"));
  const int ends_min = stop.value_or(31 * min_per_h);
  const auto received = reception::clock_from_text(typed_at(text, "collection.received"));
  if (!received || *received < ends_min) {
    changes.push_back({"collection.received", in_toml(reception::say_clock(ends_min + min_per_h / 2))});
  }
  return changes;
}

std::vector<std::string> void_lines(int at_min, bool kept) {
  std::vector<std::string> lines{"at = " + in_toml(reception::say_clock(at_min)), "volume = \"250 mL\""};
  if (!kept) {
    lines.emplace_back("kept = false");
  }
  return lines;
}

} // namespace

std::string Studio::ask_at_counter(const std::string& request, bool on) {
  const std::string asked =
      strict::value_at(impl_->draft->text(), strict::path_from(requests_at)).value_or("[]");
  return impl_->changed(
      impl_->draft->change({{requests_at, on ? with_word(asked, request) : without_word(asked, request)}},
                           spoken(request) + (on ? ": asked for at the counter" : ": not asked for there")));
}

std::string Studio::add_counter() {
  const auto& book = reception::shipped_book();
  const auto& read = impl_->draft->case_as_read();
  if (!book || impl_->form.counter) {
    return "";
  }
  const specimen::Specimen& specimen = read ? read->specimen : impl_->shelf->plain;
  return impl_->changed(impl_->draft->change(plain_counter(specimen, *book), "the counter: added"));
}

std::string Studio::add_void() {
  const std::string& text = impl_->draft->text();
  const char* const list = "collection.void";
  const auto path = strict::path_from(list);
  std::vector<int> at;
  for (std::size_t i = 0;; ++i) {
    const std::string one = typed_at(text, fmt::format("{}[{}].at", list, i));
    if (one.empty()) {
      break;
    }
    at.push_back(reception::clock_from_text(one).value_or(0));
  }
  strict::Edited edited = text;
  if (at.empty()) { // The one at the start, thrown away, and one after it.
    edited = author::save(text, plain_day(text, impl_->draft->case_as_read().get()));
    const int start_min =
        edited ? reception::clock_from_text(typed_at(*edited, "collection.start")).value_or(0) : 0;
    edited = edited ? strict::add_element(*edited, path, void_lines(start_min, false)) : edited;
    at.push_back(start_min);
  }
  constexpr int between_min = 4 * min_per_h;
  edited = edited
               ? strict::add_element(*edited, path,
                                     void_lines(*std::max_element(at.begin(), at.end()) + between_min, true))
               : edited;
  if (!edited) {
    return edited.error();
  }
  impl_->draft->replace(std::move(*edited), "a void: added");
  impl_->renew();
  return "";
}

} // namespace matula::drafting
