#pragma once

#include "engine/scenario/problem.hpp"
#include "engine/sitting/fields.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace matula::sitting {

/// Problems of one line, at its number (from 1).
class LineProblems {
public:
  LineProblems(std::string file, scenario::Problems& problems)
      : file_(std::move(file)), problems_(problems) {}
  void add(int line, std::string_view text, const std::vector<Wrong>& wrongs) {
    for (const Wrong& wrong : wrongs) {
      problems_.push_back({file_, line, 0, std::string(text), wrong.found, wrong.expected});
    }
  }

private:
  std::string file_;
  scenario::Problems& problems_;
};

/// A JSON object; anything else is noted.
[[nodiscard]] inline std::optional<nlohmann::json> parse_object(std::string_view text,
                                                                std::vector<Wrong>& wrongs) {
  nlohmann::json object = nlohmann::json::parse(text, nullptr, false);
  if (object.is_discarded() || !object.is_object()) {
    wrongs.push_back({"a line that is not a JSON object", "one object a line: {\"do\": \"pour\", ...}"});
    return std::nullopt;
  }
  return object;
}

} // namespace matula::sitting
