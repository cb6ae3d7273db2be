// The form's side of a studio: every change of the draft.
#include "engine/assets/world.hpp"
#include "engine/author/recipe_here.hpp"
#include "engine/author/worth.hpp"
#include "engine/drafting/answer.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/drafting/form.hpp"
#include "engine/drafting/list_text.hpp"
#include "engine/drafting/studio_impl.hpp"
#include "engine/drafting/substances.hpp"
#include "engine/scenario/quantity.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::drafting {

namespace {

constexpr const char* asked_tests = "asked.tests";
constexpr const char* bottles_out = "bench.reagents";

std::string list_at(const std::string& text, const char* path) {
  return strict::value_at(text, strict::path_from(path)).value_or("[]");
}

/// The unit the author wrote it in, else the row's own.
std::string unit_for(const Row& row) {
  const auto written = scenario::split_quantity(row.value);
  return written ? written->unit : row.unit;
}

std::string say_change(const Row& row, const std::string& to) {
  if (row.entry == Entry::Paragraph) {
    return row.label;
  }
  return fmt::format("{}: {} → {}", row.label, row.value.empty() ? "nothing" : row.value,
                     to.empty() ? "nothing" : to);
}

/// As TOML writes what was typed into a row: a list keeps the remarks in it.
std::string written(const Row& row, const std::string& words, const std::string& text) {
  if (row.entry == Entry::Numbers) {
    const auto numbers = numbers_typed(words);
    const auto list = strict::value_at(text, strict::path_from(row.path)).value_or("");
    return numbers.empty() ? toml_of(row.entry, words, "") : with_numbers(list, numbers);
  }
  return toml_of(row.entry, words, unit_for(row));
}

/// What goes when a row is taken away: of a list of tables the whole element.
std::string whole_of(const std::string& path) {
  const auto bracket = path.find(']');
  return bracket == std::string::npos ? path : path.substr(0, bracket + 1);
}

} // namespace

void Studio::Impl::renew() {
  last_version = draft->version();
  form = form_of(draft->text(), draft->problems(), *shelf);
  judge();
  composing.drop();
  proposal.reset();
  refusal.clear();
  {
    const std::lock_guard lock(guard);
    composed.reset();
  }
  if (draft->problems().empty()) {
    showing.want(draft->version(), draft->case_as_read(), scenario::review_of(draft->text()));
  } else {
    showing.drop();
  }
  see();
}

void Studio::Impl::judge() {
  const auto& read = draft->case_as_read();
  const auto& book = reception::shipped_book();
  if (!read) {
    return;
  }
  form.answer_fresh = draft->problems().empty();
  if (book && read->collection) {
    form.answer = answer_to(*read->collection, *book);
  }
  for (const auto& advice : author::advise_on_weights(*read)) {
    form.weights.push_back(advice.words);
  }
}

std::string Studio::Impl::changed(const std::string& problem) {
  if (problem.empty()) {
    renew();
  }
  return problem;
}

const Form& Studio::form() const {
  return impl_->form;
}

unsigned Studio::version() const {
  return impl_->draft ? impl_->draft->version() : 0;
}

const std::string& Studio::text() const {
  return impl_->draft->text();
}

std::string Studio::set(const std::string& path, const std::string& typed) {
  const Row* row = find_row(impl_->form, path);
  if (row == nullptr) {
    return "There is no row for " + path + ".";
  }
  const std::string words = trimmed(typed);
  if (words == row->value) {
    return "";
  }
  const bool wordy = row->entry == Entry::Line || row->entry == Entry::Paragraph;
  std::optional<std::string> value;
  if (!words.empty() || (wordy && !row->optional)) {
    value = written(*row, words, impl_->draft->text());
  }
  const std::string told = value ? typed_at("value = " + *value + "\n", "value") : "";
  return impl_->changed(impl_->draft->change({{path, value}}, say_change(*row, told)));
}

std::string Studio::step(const std::string& path, bool more) {
  const Row* row = find_row(impl_->form, path);
  return row == nullptr ? "" : set(path, stepped(row->value, more, row->step));
}

std::string Studio::remove(const std::string& path) {
  const Row* row = find_row(impl_->form, path);
  const std::string label = row == nullptr ? path : row->label;
  return impl_->changed(impl_->draft->change({{whole_of(path), std::nullopt}}, label + ": taken out"));
}

std::string Studio::add(const std::string& path) {
  const std::string amount = first_amount(path, *impl_->shelf);
  const std::string label = spoken(strict::path_from(path).back().key);
  return impl_->changed(
      impl_->draft->change({{path, toml_of(Entry::Quantity, amount, "")}}, label + ": " + amount + " added"));
}

std::string Studio::add_leg() {
  return impl_->changed(impl_->draft->add("specimen.leg", {"hours = \"1 h\"", "temperature = \"22 C\""},
                                          "a leg of the way: added"));
}

std::string Studio::add_preservative(const std::string& bottle) {
  return impl_->changed(impl_->draft->add(
      "specimen.preservative",
      {"bottle = " + toml_of(Entry::Choice, bottle, ""), "dose_per_100_ml = \"0.1 g\"", "at = \"0 h\""},
      spoken(bottle) + ": put in"));
}

std::string Studio::add_question() {
  // A key no other question has.
  int number = 1;
  const auto taken = [&] {
    return impl_->draft->text().find(fmt::format("\"question_{}\"", number)) != std::string::npos;
  };
  while (taken()) {
    ++number;
  }
  return impl_->changed(impl_->draft->add("decision",
                                          {fmt::format("key = \"question_{}\"", number),
                                           "prompt = \"What do the findings mean?\"", "right = \"first\"",
                                           "why = \"Write here why.\"",
                                           "options = { first = \"One thing\", second = \"Another thing\" }"},
                                          "a question: added"));
}

std::string Studio::add_option(const std::string& path) {
  const std::string question = path.substr(0, path.rfind('.'));
  const auto free = [&](const std::string& name) {
    return !strict::value_at(impl_->draft->text(), strict::path_from(question + ".options." + name));
  };
  std::string name;
  for (const char* usual : {"first", "second", "third", "fourth", "fifth", "sixth"}) {
    name = name.empty() && free(usual) ? usual : name;
  }
  for (int number = 7; name.empty(); ++number) {
    const std::string next = fmt::format("option_{}", number);
    name = free(next) ? next : "";
  }
  return impl_->changed(
      impl_->draft->change({{question + ".options." + name, "\"Another thing\""}}, "an option: added"));
}

std::string Studio::ask_for(const std::string& test, bool on) {
  const std::string& text = impl_->draft->text();
  const std::string asked = list_at(text, asked_tests);
  std::vector<author::Change> changes{{asked_tests, on ? with_word(asked, test) : without_word(asked, test)}};
  const auto* rule = impl_->shelf->standards->rules.find_test(test);
  if (on && rule != nullptr) {
    std::string bottles = list_at(text, bottles_out);
    auto out = words_of_list(bottles);
    const auto recipe = author::recipe_here(*rule, impl_->shelf->standards->recipes.at(test), out,
                                            impl_->shelf->world->catalogue);
    (void)author::put_out(recipe, rule->curve, out);
    for (const auto& bottle : out) {
      bottles = with_word(bottles, bottle);
    }
    changes.push_back({bottles_out, bottles});
  }
  const std::string name = rule == nullptr ? spoken(test) : rule->title;
  return impl_->changed(impl_->draft->change(changes, name + (on ? ": asked for" : ": not asked for")));
}

std::string Studio::put_out(const std::string& bottle, bool on) {
  const std::string out = list_at(impl_->draft->text(), bottles_out);
  std::vector<author::Change> changes{{bottles_out, on ? with_word(out, bottle) : without_word(out, bottle)}};
  if (!on) {
    changes.push_back({"bench.bottle_age." + bottle, std::nullopt});
  }
  return impl_->changed(impl_->draft->change(changes, spoken(bottle) + (on ? ": put out" : ": put away")));
}

void Studio::set_text(const std::string& text) {
  impl_->draft->replace(text, "the file itself");
  impl_->renew();
}

bool Studio::can_undo() const {
  return impl_->draft && impl_->draft->can_undo();
}

bool Studio::can_redo() const {
  return impl_->draft && impl_->draft->can_redo();
}

std::string Studio::undo() {
  const std::string words = impl_->draft->undo();
  if (!words.empty()) {
    impl_->renew();
  }
  return words;
}

std::string Studio::redo() {
  const std::string words = impl_->draft->redo();
  if (!words.empty()) {
    impl_->renew();
  }
  return words;
}

} // namespace matula::drafting
