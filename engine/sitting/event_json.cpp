#include "engine/sitting/event_json.hpp"

#include "engine/sitting/action_fields.hpp"
#include "engine/sitting/field_reader.hpp"
#include "engine/sitting/field_writer.hpp"

#include <utility>

namespace matula::sitting {

namespace {

using nlohmann::json;
constexpr double longest_sitting_s = 7 * 86400.0;

template <std::size_t... I> bench::Action make_action(std::size_t index, std::index_sequence<I...> /*all*/) {
  bench::Action action;
  (void)((index == I ? (action = std::variant_alternative_t<I, bench::Action>{}, true) : false) || ...);
  return action;
}

std::string all_words() {
  std::string words;
  for (const std::string_view word : action_words) {
    words += std::string(word) + ", ";
  }
  return words + "record or finish";
}

void read_what(FieldReader& fields, const std::string& word, Event& event) {
  if (word == "finish") {
    event.what = Finish{};
    return;
  }
  if (word == "record") {
    Record record;
    fields.must("item", record.item);
    fields.must("value", record.value);
    event.what = record;
    return;
  }
  for (std::size_t i = 0; i < std::size(action_words); ++i) {
    if (action_words[i] == word) {
      bench::Action action = make_action(i, std::make_index_sequence<std::size(action_words)>{});
      std::visit([&](auto& a) { visit_fields(fields, a); }, action);
      event.what = action;
      return;
    }
  }
  fields.complain("\"do\": \"" + word + "\"", all_words());
  fields.ignore_the_rest();
}

} // namespace

std::string to_line(const Event& event) {
  FieldWriter fields;
  fields.must("t", event.time_s);
  if (const auto* record = std::get_if<Record>(&event.what)) {
    fields.word("record");
    fields.must("item", record->item);
    fields.must("value", record->value);
  } else if (const auto* action = std::get_if<bench::Action>(&event.what)) {
    fields.word(action_words[action->index()]);
    bench::Action copy = *action;
    std::visit([&](auto& a) { visit_fields(fields, a); }, copy);
  } else {
    fields.word("finish");
  }
  return fields.line();
}

tl::expected<Event, scenario::Problems> from_line(std::string_view line, const std::string& file,
                                                  int line_number) {
  FieldReader fields(line, file, line_number);
  Event event;
  fields.may("t", event.time_s, 0.0, longest_sitting_s);
  std::string word;
  fields.must("do", word);
  if (!word.empty()) {
    read_what(fields, word, event);
  }
  fields.refuse_unknown();
  if (!fields.problems().empty()) {
    return tl::make_unexpected(fields.problems());
  }
  return event;
}

} // namespace matula::sitting
