#pragma once

#include "engine/sitting/words.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <string_view>

namespace matula::sitting {

/// Collects the fields of one line in the order they are given.
class FieldWriter {
public:
  void word(std::string_view word) { object_["do"] = std::string(word); }

  template <class Value, class... Range> void must(const char* name, Value& value, Range... /*range*/) {
    put(name, value);
  }
  template <class Value, class... Range> void may(const char* name, Value& value, Range... /*range*/) {
    put(name, value);
  }

  [[nodiscard]] std::string line() const {
    return object_.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
  }

private:
  template <class Value> void put(const char* name, const Value& value) {
    if constexpr (std::is_enum_v<Value>) {
      for (const auto& [choice, text] : Words<Value>::list) {
        if (choice == value) {
          object_[name] = std::string(text);
        }
      }
    } else {
      object_[name] = value;
    }
  }

  nlohmann::ordered_json object_ = nlohmann::ordered_json::object();
};

} // namespace matula::sitting
