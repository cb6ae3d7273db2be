#include "engine/sitting/fields.hpp"

#include "engine/strict/nearest.hpp"

#include <algorithm>
#include <cmath>
#include <sstream>

namespace matula::sitting {

namespace {

std::string shown(const char* key, const nlohmann::json& value) {
  constexpr auto lenient = nlohmann::json::error_handler_t::replace;
  return "\"" + std::string(key) + "\": " + value.dump(-1, ' ', false, lenient);
}

std::string plain(double value) {
  std::ostringstream out;
  out << value;
  return out.str();
}

} // namespace

const nlohmann::json* FieldReader::find(const char* key, bool needed, const std::string& example) {
  known_.emplace_back(key);
  const auto at = object_.find(key);
  if (at != object_.end()) {
    return &*at;
  }
  if (needed) {
    wrongs_.push_back({"no \"" + std::string(key) + "\"", "\"" + std::string(key) + "\": " + example});
  }
  return nullptr;
}

void FieldReader::name(const char* key, std::string& value, bool needed) {
  const nlohmann::json* field = find(key, needed, "\"...\"");
  if (field == nullptr) {
    return;
  }
  if (!field->is_string()) {
    wrongs_.push_back({shown(key, *field), "words in \"quotes\""});
    return;
  }
  value = field->get<std::string>();
}

void FieldReader::names(const char* key, std::vector<std::string>& values, bool needed) {
  const nlohmann::json* field = find(key, needed, "[\"...\", \"...\"]");
  if (field == nullptr) {
    return;
  }
  const bool words =
      field->is_array() &&
      std::all_of(field->begin(), field->end(), [](const nlohmann::json& one) { return one.is_string(); });
  if (!words) {
    wrongs_.push_back({shown(key, *field), "a list of words, [\"...\", \"...\"]"});
    return;
  }
  values = field->get<std::vector<std::string>>();
}

void FieldReader::number(const char* key, double& value, double low, double high, bool needed) {
  const std::string allowed = "a number from " + plain(low) + " to " + plain(high);
  const nlohmann::json* field = find(key, needed, allowed);
  if (field == nullptr) {
    return;
  }
  const double given = field->is_number() ? field->get<double>() : std::nan("");
  if (!(given >= low && given <= high)) {
    wrongs_.push_back({shown(key, *field), allowed});
    return;
  }
  value = given;
}

void FieldReader::flag(const char* key, bool& value, bool needed) {
  const nlohmann::json* field = find(key, needed, "true or false");
  if (field == nullptr) {
    return;
  }
  if (!field->is_boolean()) {
    wrongs_.push_back({shown(key, *field), "true or false"});
    return;
  }
  value = field->get<bool>();
}

void FieldReader::pick(const char* key, std::size_t& at, const std::vector<std::string>& words, bool needed) {
  const nlohmann::json* field = find(key, needed, "\"" + words.front() + "\"");
  if (field == nullptr) {
    return;
  }
  const std::string given = field->is_string() ? field->get<std::string>() : "";
  const auto word = std::find(words.begin(), words.end(), given);
  if (word == words.end()) {
    wrongs_.push_back({shown(key, *field), strict::suggestion(given, words)});
    return;
  }
  at = static_cast<std::size_t>(word - words.begin());
}

void FieldReader::finish() {
  for (const auto& [key, value] : object_.items()) {
    if (std::find(known_.begin(), known_.end(), key) == known_.end()) {
      wrongs_.push_back({"unknown field \"" + key + "\"", strict::suggestion(key, known_)});
    }
  }
}

} // namespace matula::sitting
