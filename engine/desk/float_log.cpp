#include "engine/desk/float_log.hpp"

#include <nlohmann/json.hpp>

#include <array>
#include <cstdio>
#include <fstream>
#include <memory>
#include <unistd.h>

namespace matula::desk {

namespace {

using nlohmann::json;

constexpr std::array<const char*, 3> decision_words{"use", "correct", "discard"}; // By FloatDecision.

std::optional<FloatLogLine> line_from(const std::string& text) {
  const json object = json::parse(text, nullptr, false);
  if (!object.is_object() || !object.contains("float") || !object["float"].is_string()) {
    return std::nullopt;
  }
  FloatLogLine line;
  line.series = object["float"].get<std::string>();
  if (object.contains("afresh")) {
    line.afresh = true;
    return line;
  }
  if (object.contains("error") && object["error"].is_number()) {
    line.error = object["error"].get<double>();
  }
  for (std::size_t i = 0; i < decision_words.size(); ++i) {
    if (object.value("decision", json()) == decision_words[i]) {
      line.decision = static_cast<FloatDecision>(i);
      return line;
    }
  }
  return std::nullopt;
}

std::string text_of(const FloatLogLine& line) {
  json object{{"float", line.series}};
  if (line.afresh) {
    object["afresh"] = true;
  } else {
    object["error"] = line.error ? json(*line.error) : json();
    object["decision"] = decision_words[static_cast<std::size_t>(line.decision)];
  }
  return object.dump() + "\n";
}

/// A piece of a line that a crash left at the end must not swallow the next one.
bool ends_in_a_line(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary | std::ios::ate);
  if (!in || in.tellg() == 0) {
    return true;
  }
  in.seekg(-1, std::ios::end);
  return in.get() == '\n';
}

} // namespace

std::vector<FloatLogLine> read_float_log(const std::filesystem::path& file) {
  std::vector<FloatLogLine> lines;
  std::ifstream in(file);
  for (std::string text; std::getline(in, text);) {
    if (auto line = line_from(text)) {
      lines.push_back(std::move(*line));
    }
  }
  return lines;
}

bool append_float_log(const std::filesystem::path& file, const FloatLogLine& line) {
  const std::string text = (ends_in_a_line(file) ? "" : "\n") + text_of(line);
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> out(std::fopen(file.c_str(), "ab"), std::fclose);
  return out && std::fwrite(text.data(), 1, text.size(), out.get()) == text.size() &&
         std::fflush(out.get()) == 0 && ::fsync(::fileno(out.get())) == 0;
}

} // namespace matula::desk
