#include "engine/sitting/steps.hpp"

#include "engine/sitting/event_fields.hpp"
#include "engine/sitting/event_json.hpp"
#include "engine/sitting/json_lines.hpp"
#include "engine/sitting/log.hpp"
#include "engine/strict/file.hpp"

#include <algorithm>

namespace matula::sitting {

namespace {

bool is_passed_over(std::string_view line) {
  const std::size_t first = line.find_first_not_of(" \t\r");
  return first == std::string_view::npos || line[first] == '#';
}

std::optional<Event> read_wait(const nlohmann::json& object, std::vector<Wrong>& wrongs) {
  bench::Wait wait;
  FieldReader reader(object, wrongs);
  const std::size_t before = wrongs.size();
  reader.number("wait", wait.seconds, 0, most_seconds, true);
  reader.finish();
  return wrongs.size() == before ? std::optional<Event>(Event{0, bench::Action(wait)}) : std::nullopt;
}

std::optional<Event> read_step(std::string_view text, std::vector<Wrong>& wrongs) {
  const auto object = parse_object(text, wrongs);
  if (!object) {
    return std::nullopt;
  }
  return object->contains("wait") ? read_wait(*object, wrongs) : read_event(*object, Time::Optional, wrongs);
}

} // namespace

tl::expected<std::vector<Event>, scenario::Problems> parse_steps(std::string_view text,
                                                                 const std::string& file_name) {
  std::vector<Event> events;
  scenario::Problems problems;
  LineProblems at_line(file_name, problems);
  int line = 0;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    const std::string_view words = text.substr(from, end - from);
    from = end + 1;
    ++line;
    if (is_passed_over(words)) {
      continue;
    }
    std::vector<Wrong> wrongs;
    if (auto event = read_step(words, wrongs)) {
      event->time_s = std::max(event->time_s, last_time_s(events));
      events.push_back(*event);
    }
    at_line.add(line, words, wrongs);
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return events;
}

tl::expected<std::vector<Event>, scenario::Problems> read_steps(const std::filesystem::path& file) {
  std::string text;
  if (!strict::read_text(file, text)) {
    return tl::make_unexpected(
        scenario::Problems{{file.string(), 0, 0, "", "no readable file", "a file of steps at this place"}});
  }
  return parse_steps(text, file.string());
}

} // namespace matula::sitting
