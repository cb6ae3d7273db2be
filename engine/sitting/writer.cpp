#include "engine/sitting/writer.hpp"

#include "engine/sitting/event_json.hpp"

namespace matula::sitting {

tl::expected<LogWriter, scenario::Problems> LogWriter::create(const std::filesystem::path& file,
                                                              const Header& header) {
  auto lines = LineWriter::create(file, to_line(header));
  if (!lines) {
    return tl::make_unexpected(lines.error());
  }
  return LogWriter(std::move(*lines));
}

tl::expected<LogWriter, scenario::Problems> LogWriter::reopen(const std::filesystem::path& file,
                                                              const Log& log) {
  auto lines = LineWriter::reopen(file, log.good_bytes);
  if (!lines) {
    return tl::make_unexpected(lines.error());
  }
  return LogWriter(std::move(*lines));
}

bool LogWriter::append(const Event& event) {
  const std::string line = to_line(event);
  const bool good = lines_.append(line);
  if (good && watch_) {
    watch_(line);
  }
  return good;
}

} // namespace matula::sitting
