#pragma once

#include "engine/sitting/event.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <utility>
#include <vector>

namespace matula::sitting {

/// What is wrong with one line.
struct Wrong {
  std::string found;
  std::string expected;
};

/// Takes fields out of one JSON object. Every wrong, missing or left-over field is noted.
class FieldReader {
public:
  FieldReader(const nlohmann::json& object, std::vector<Wrong>& wrongs) : object_(object), wrongs_(wrongs) {}

  void name(const char* key, std::string& value, bool needed = true);
  void names(const char* key, std::vector<std::string>& values, bool needed = true);
  void number(const char* key, double& value, double low, double high, bool needed = false);
  void flag(const char* key, bool& value, bool needed = false);
  template <class Enum>
  void choice(const char* key, Enum& value, const std::vector<std::string>& words, bool needed = false) {
    std::size_t at = static_cast<std::size_t>(value);
    pick(key, at, words, needed);
    value = static_cast<Enum>(at);
  }
  /// Fields nobody asked for.
  void finish();

private:
  const nlohmann::json* find(const char* key, bool needed, const std::string& example);
  void pick(const char* key, std::size_t& at, const std::vector<std::string>& words, bool needed);

  const nlohmann::json& object_;
  std::vector<Wrong>& wrongs_;
  std::vector<std::string> known_;
};

/// Puts the same fields into one JSON object, all of them.
class FieldWriter {
public:
  explicit FieldWriter(nlohmann::ordered_json& object) : object_(object) {}

  void name(const char* key, const std::string& value, bool = true) { object_[key] = value; }
  void names(const char* key, const std::vector<std::string>& values, bool = true) { object_[key] = values; }
  void number(const char* key, double value, double, double, bool = false) { object_[key] = value; }
  void flag(const char* key, bool value, bool = false) { object_[key] = value; }
  template <class Enum>
  void choice(const char* key, Enum value, const std::vector<std::string>& words, bool = false) {
    object_[key] = words[static_cast<std::size_t>(value)];
  }

private:
  nlohmann::ordered_json& object_;
};

} // namespace matula::sitting
