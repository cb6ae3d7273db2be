#include "engine/sitting/log.hpp"

#include "engine/scenario/scenario.hpp"
#include "engine/sitting/event_json.hpp"
#include "engine/sitting/json_lines.hpp"
#include "engine/strict/file.hpp"

#include <algorithm>

namespace matula::sitting {

namespace {

constexpr double highest_seed = 2147483647;

/// Reads and writes the header's fields.
template <class F> void header_fields(F& f, Header& header, double& format, double& seed) {
  f.number("matula_sitting", format, log_format, log_format, true);
  f.name("scenario", header.scenario_key);
  f.name("scenario_file", header.scenario_file);
  f.name("scenario_hash", header.scenario_hash);
  f.number("seed", seed, 0, highest_seed, true);
  f.name("program", header.program);
}

Header read_header(std::string_view text, std::vector<Wrong>& wrongs) {
  Header header;
  const auto object = parse_object(text, wrongs);
  if (object) {
    FieldReader reader(*object, wrongs);
    double format = 0;
    double seed = 0;
    header_fields(reader, header, format, seed);
    reader.finish();
    header.format = static_cast<int>(format);
    header.seed = static_cast<std::uint64_t>(seed);
  }
  return header;
}

struct Reader {
  Log log;
  scenario::Problems problems;
  LineProblems at_line;
  bool finished = false;

  explicit Reader(const std::string& file) : at_line(file, problems) {}

  void event(int line, std::string_view text) {
    std::vector<Wrong> wrongs;
    const auto object = parse_object(text, wrongs);
    const auto read = object ? read_event(*object, Time::Needed, wrongs) : std::nullopt;
    if (read) {
      check_order(*read, wrongs);
      log.events.push_back(*read);
    }
    at_line.add(line, text, wrongs);
  }

  void check_order(const Event& event, std::vector<Wrong>& wrongs) {
    if (finished) {
      wrongs.push_back({"a line after the worksheet was handed in", "nothing after \"finish\""});
    }
    if (event.time_s < last_time_s(log.events)) {
      wrongs.push_back({"a time before that of the line above", "\"t\" that never falls"});
    }
    finished = finished || std::holds_alternative<Finish>(event.what);
  }
};

} // namespace

Header header_for(const scenario::Scenario& scenario) {
  return {log_format, scenario.key, scenario.file, scenario.content_hash, scenario.seed, MATULA_VERSION};
}

std::string to_line(const Header& header) {
  nlohmann::ordered_json object;
  object["matula_sitting"] = header.format;
  object["scenario"] = header.scenario_key;
  object["scenario_file"] = header.scenario_file;
  object["scenario_hash"] = header.scenario_hash;
  object["seed"] = header.seed;
  object["program"] = header.program;
  return object.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

double last_time_s(const std::vector<Event>& events) {
  return events.empty() ? 0 : events.back().time_s;
}

tl::expected<Log, scenario::Problems> parse_log(std::string_view text, const std::string& file_name) {
  Reader reader(file_name);
  int line = 0;
  std::size_t from = 0;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n', from)) {
    const std::string_view words = text.substr(from, end - from);
    from = end + 1;
    if (++line == 1) {
      std::vector<Wrong> wrongs;
      reader.log.header = read_header(words, wrongs);
      reader.at_line.add(line, words, wrongs);
    } else {
      reader.event(line, words);
    }
  }
  reader.log.good_bytes = from;
  reader.log.cut_off = std::string(text.substr(from));
  if (line == 0) {
    reader.at_line.add(1, text,
                       {{"no whole first line", "a sitting's first line: {\"matula_sitting\": 1, ...}"}});
  }
  if (!reader.problems.empty()) {
    return tl::make_unexpected(std::move(reader.problems));
  }
  return std::move(reader.log);
}

tl::expected<Log, scenario::Problems> read_log(const std::filesystem::path& file) {
  std::string text;
  if (!strict::read_text(file, text)) {
    return tl::make_unexpected(
        scenario::Problems{{file.string(), 0, 0, "", "no readable file", "a sitting's log at this place"}});
  }
  return parse_log(text, file.string());
}

scenario::Problems check_scenario(const Header& header, const scenario::Scenario& scenario,
                                  const std::string& log_file) {
  const bool same =
      header.scenario_hash == scenario.content_hash || header.scenario_hash == scenario.bench_hash;
  if (same && header.seed == scenario.seed) {
    return {};
  }
  return {{log_file, 1, 0, to_line(header),
           "a sitting at another version of the scenario '" + scenario.key + "' (" + header.scenario_hash +
               ", now " + scenario.content_hash + ")",
           "the scenario file as it was when the sitting began"}};
}

} // namespace matula::sitting
