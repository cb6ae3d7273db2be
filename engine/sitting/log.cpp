#include "engine/sitting/log.hpp"

#include "engine/sitting/event_json.hpp"
#include "engine/sitting/field_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <optional>
#include <sstream>

namespace matula::sitting {

namespace {

using scenario::Problem;
using scenario::Problems;

constexpr const char* format_word = "matula sitting 1";

tl::expected<std::string, Problems> read_file(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  std::ostringstream text;
  text << stream.rdbuf();
  if (!stream.is_open() || stream.bad()) {
    return tl::make_unexpected(
        Problems{{file.string(), 0, 0, "", "a file that cannot be read", "a readable file"}});
  }
  return text.str();
}

/// Calls `use(line, number)` for every line that ends in a line break; returns how many bytes those are.
template <class Use> std::size_t for_each_whole_line(std::string_view text, Use use) {
  std::size_t start = 0;
  int number = 1;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n', start)) {
    use(text.substr(start, end - start), number++);
    start = end + 1;
  }
  return start;
}

void read_header(std::string_view line, const std::string& file, Log& log, Problems& problems) {
  FieldReader fields(line, file, 1);
  std::string format;
  fields.must("format", format);
  fields.must("scenario", log.header.scenario);
  fields.must("digest", log.header.scenario_digest);
  fields.must("program", log.header.program);
  fields.refuse_unknown();
  if (fields.problems().empty() && format != format_word) {
    fields.complain("\"format\": \"" + format + "\"", std::string("\"") + format_word + "\"");
  }
  problems.insert(problems.end(), fields.problems().begin(), fields.problems().end());
}

void read_event(std::string_view line, const std::string& file, int number, std::vector<Event>& events,
                Problems& problems) {
  auto event = from_line(line, file, number);
  if (!event) {
    problems.insert(problems.end(), event.error().begin(), event.error().end());
    return;
  }
  if (!events.empty() && std::holds_alternative<Finish>(events.back().what)) {
    problems.push_back({file, number, 0, std::string(line), "an event after \"finish\"", "no further lines"});
    return;
  }
  events.push_back(*event);
}

} // namespace

std::string digest(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL; // FNV-1a offset basis
  for (const char c : text) {
    hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211ULL; // FNV prime
  }
  return fmt::format("{:016x}", hash);
}

tl::expected<Log, Problems> parse_log(std::string_view text, const std::string& file_name) {
  Log log;
  Problems problems;
  double last_s = 0;
  log.whole_bytes = for_each_whole_line(text, [&](std::string_view line, int number) {
    if (number == 1) {
      read_header(line, file_name, log, problems);
      return;
    }
    const std::size_t before = log.events.size();
    read_event(line, file_name, number, log.events, problems);
    if (log.events.size() > before) {
      if (log.events.back().time_s < last_s) {
        problems.push_back({file_name, number, 0, std::string(line),
                            fmt::format("a time of {:g} s after {:g} s", log.events.back().time_s, last_s),
                            "times that never run backwards"});
      }
      last_s = log.events.back().time_s;
    }
  });
  log.last_line_was_cut = log.whole_bytes < text.size();
  if (log.whole_bytes == 0) {
    problems.push_back({file_name, 0, 0, "", "a file without a whole first line",
                        "a sitting, which begins with its header"});
  }
  if (!problems.empty()) {
    return tl::make_unexpected(problems);
  }
  return log;
}

tl::expected<Log, Problems> read_log(const std::filesystem::path& file) {
  return read_file(file).and_then([&](const std::string& text) { return parse_log(text, file.string()); });
}

tl::expected<std::vector<Event>, Problems> parse_steps(std::string_view text, const std::string& file_name) {
  std::vector<Event> events;
  Problems problems;
  const auto use = [&](std::string_view line, int number) {
    const std::size_t first = line.find_first_not_of(" \t\r");
    if (first != std::string_view::npos && line[first] != '#') {
      read_event(line, file_name, number, events, problems);
    }
  };
  const std::size_t whole = for_each_whole_line(text, use);
  if (whole < text.size()) { // A hand-written file may lack its last line break.
    const std::string_view rest = text.substr(whole);
    use(rest, 1 + static_cast<int>(std::count(text.begin(), text.end(), '\n')));
  }
  if (!problems.empty()) {
    return tl::make_unexpected(problems);
  }
  return events;
}

tl::expected<std::vector<Event>, Problems> read_steps(const std::filesystem::path& file) {
  return read_file(file).and_then([&](const std::string& text) { return parse_steps(text, file.string()); });
}

} // namespace matula::sitting
