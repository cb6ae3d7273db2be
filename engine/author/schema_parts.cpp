#include "engine/author/schema_parts.hpp"

#include "engine/author/number_pattern.hpp"

namespace matula::author {

Json words(const std::string& about) {
  return {{"description", about}, {"type", "string"}, {"minLength", 1}};
}

Json maybe_words(const std::string& about) {
  return {{"description", about}, {"type", "string"}};
}

Json one_of(const std::string& about, const std::vector<std::string>& allowed) {
  return {{"description", about}, {"enum", allowed}};
}

Json list_of(const std::string& about, const std::vector<std::string>& allowed, bool some) {
  Json list = {
      {"description", about}, {"type", "array"}, {"items", {{"enum", allowed}}}, {"uniqueItems", true}};
  if (some) {
    list["minItems"] = 1;
  }
  return list;
}

Json number(const std::string& about, const strict::Range& range) {
  return {{"description", about}, {"type", "number"}, {"minimum", range.low}, {"maximum", range.high}};
}

Json whole(const std::string& about, const strict::Range& range) {
  return {{"description", about},
          {"type", "integer"},
          {"minimum", static_cast<long long>(range.low)},
          {"maximum", static_cast<long long>(range.high)}};
}

Json yes_or_no(const std::string& about) {
  return {{"description", about}, {"type", "boolean"}};
}

Json quantity(const std::string& about, const scenario::Measure& measure) {
  return {{"description", about + ": " + scenario::allowed_words(measure)},
          {"type", "string"},
          {"pattern", quantity_pattern(measure)}};
}

Json table(const std::string& about, const Json& properties, const std::vector<std::string>& required) {
  Json all = {{"description", about}, {"type", "object"}, {"properties", properties}};
  if (!required.empty()) {
    all["required"] = required;
  }
  all["unevaluatedProperties"] = false;
  return all;
}

Json tables(const std::string& about, const Json& properties, const std::vector<std::string>& required) {
  return {{"description", about}, {"type", "array"}, {"items", table(about, properties, required)}};
}

} // namespace matula::author
