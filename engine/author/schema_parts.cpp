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

Json property(const Field& field) {
  using Kind = Field::Kind;
  switch (field.kind) {
  case Kind::Words:
    break;
  case Kind::MaybeWords:
    return maybe_words(field.about);
  case Kind::Clock: {
    Json time = words(field.about + ", such as \"07:40\" or \"07:40 day 2\"");
    time["pattern"] = "^([01][0-9]|2[0-3]):[0-5][0-9]( day [1-9])?$";
    return time;
  }
  case Kind::OneOf:
    return one_of(field.about, field.allowed);
  case Kind::ListOf:
    return list_of(field.about, field.allowed, field.needed);
  case Kind::Number:
    return number(field.about, field.range);
  case Kind::Whole:
    return whole(field.about, field.range);
  case Kind::Numbers:
    return {{"description", field.about},
            {"type", "array"},
            {"items", number(field.range.unit, field.range)},
            {"minItems", field.count},
            {"maxItems", field.count}};
  case Kind::YesNo:
    return yes_or_no(field.about);
  case Kind::Quantity:
    return quantity(field.about, field.measure);
  }
  return words(field.about);
}

Json table(const std::string& about, const Fields& fields) {
  Json properties = Json::object();
  std::vector<std::string> required;
  for (const Field& field : fields) {
    properties[field.key] = property(field);
    if (field.needed) {
      required.push_back(field.key);
    }
  }
  return table(about, properties, required);
}

Json tables(const std::string& about, const Fields& fields) {
  return {{"description", about}, {"type", "array"}, {"items", table(about, fields)}};
}

} // namespace matula::author
