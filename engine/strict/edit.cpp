#include "engine/strict/edit.hpp"

#include "engine/strict/parsed.hpp"
#include "engine/strict/places.hpp"

#include <algorithm>

namespace matula::strict {

namespace {

/// The parsed text, which way a path goes through it, and where in the text that is.
struct Way {
  toml::table* table = nullptr;   ///< The last table that is there,
  const toml::key* key = nullptr; ///< the key by which it was reached (null for the root or an element),
  std::size_t depth = 0;          ///< and how many steps of the path it takes.
  toml::node* node = nullptr;     ///< What is at the end of the path; null when it is not there.
  const toml::key* node_key = nullptr;
};

toml::node* element_of(toml::node* node, const Step& step) {
  auto* list = node == nullptr || !step.element ? nullptr : node->as_array();
  return list == nullptr || *step.element >= list->size() ? (step.element ? nullptr : node)
                                                          : list->get(*step.element);
}

Way follow(toml::table& root, const Path& path) {
  Way way;
  way.table = &root;
  for (std::size_t i = 0; i < path.size(); ++i) {
    const auto at = way.table->find(path[i].key);
    toml::node* node = at == way.table->end() ? nullptr : element_of(&at->second, path[i]);
    if (i + 1 == path.size()) {
      way.node = node;
      way.node_key = node == nullptr ? nullptr : &at->first;
      return way;
    }
    if (node == nullptr || !node->is_table()) {
      return way;
    }
    way.table = node->as_table();
    way.key = path[i].element ? nullptr : &at->first;
    way.depth = i + 1;
  }
  return way;
}

std::string say(const Path& path, std::size_t upto) {
  std::string words;
  for (std::size_t i = 0; i < upto; ++i) {
    words += (words.empty() ? "" : ".") + written_key(path[i].key);
  }
  return words;
}

/// A value on its own, read by the parser; nothing when it is not TOML.
std::optional<toml::table> read_alone(const std::string& value) {
  toml::parse_result read = toml::parse("value = " + value + "\n");
  return read && read.table().size() == 1 ? std::optional(std::move(read).table()) : std::nullopt;
}

/// Hands out what was written only when it reads as meant.
Edited checked(std::string written, const toml::table& meant) {
  toml::parse_result read = toml::parse(written);
  if (!read || !(read.table() == meant)) {
    return tl::make_unexpected(
        std::string("the change would have altered more than its own place; nothing was changed"));
  }
  return written;
}

/// Behind the last entry that belongs to the table's own body; where to put a new line, and before it what.
std::size_t end_of_body(const Places& places, const toml::table& table, std::size_t heading) {
  std::size_t end = heading;
  for (const auto& [key, node] : table) {
    const auto* inner = node.as_table();
    if (inner != nullptr && !inner->is_inline()) {
      const bool dotted = !places.is_heading(inner->source());
      end = dotted ? std::max(end, end_of_body(places, *inner, 0)) : end;
    } else if (node.as_array() == nullptr || !places.is_heading(node.source())) {
      end = std::max(end, places.end_of_line(places.at(node.source().end)));
    }
  }
  return end;
}

/// Behind everything that stands under a table, its own sub-tables too.
std::size_t end_of_family(const Places& places, const toml::node& node) {
  std::size_t end = places.end_of_line(places.at(node.source().end));
  if (const auto* table = node.as_table()) {
    for (const auto& [key, inner] : *table) {
      end = std::max(end, end_of_family(places, inner));
    }
  } else if (const auto* list = node.as_array()) {
    for (const auto& inner : *list) {
      end = std::max(end, end_of_family(places, inner));
    }
  }
  return end;
}

/// Where a new heading goes: behind the nearest relative there is, else at the end.
std::size_t place_for_heading(const Places& places, toml::table& root, const Path& path) {
  toml::table* table = &root;
  std::size_t at = places.size();
  for (const Step& step : path) {
    const auto found = table->find(step.key);
    if (found == table->end()) {
      break;
    }
    at = end_of_family(places, found->second);
    toml::node* node = element_of(&found->second, step);
    if (node == nullptr || !node->is_table()) {
      break;
    }
    table = node->as_table();
    at = step.element ? end_of_family(places, *table) : at;
  }
  return at;
}

std::string with_heading(const Places& places, std::size_t at, const std::string& heading,
                         const std::vector<std::string>& lines) {
  const std::string& end = places.line_end();
  std::string block = places.ends_line_before(at) ? "" : end;
  block += (at == 0 ? "" : end) + heading + end;
  for (const auto& line : lines) {
    block += line + end;
  }
  return places.insert(at, block);
}

/// A key that is not there, put into a table that is.
std::string add_key(const Places& places, const Way& way, const Path& path, const std::string& value) {
  const std::string line = written_key(path.back().key) + " = " + value;
  const toml::table& table = *way.table;
  if (table.is_inline()) {
    const std::size_t brace = places.at(table.source().end) - 1;
    return places.insert(places.behind_last_word(brace), (table.empty() ? " " : ", ") + line);
  }
  const bool own_heading =
      way.depth == 0 || path[way.depth - 1].element || places.closes_heading(way.key->source());
  const bool heading = way.depth > 0 && places.is_heading(table.source());
  if (way.depth > 0 && heading && !own_heading) {
    // Known from a deeper heading only: it gets one of its own before that.
    const std::size_t at = places.begin_of_line(places.at(table.source().begin));
    return places.insert(at, "[" + say(path, way.depth) + "]" + places.line_end() + line + places.line_end() +
                                 places.line_end());
  }
  const std::size_t head = heading ? places.end_of_line(places.at(table.source().begin)) : 0;
  const std::size_t at = way.depth == 0 && end_of_body(places, table, 0) == 0
                             ? places.behind_first_remarks()
                             : end_of_body(places, table, head);
  const std::string prefix = way.depth > 0 && !heading ? places.dotted_prefix(way.table->begin()->first) : "";
  return places.insert(at, (places.ends_line_before(at) ? "" : places.line_end()) + places.indent_before(at) +
                               prefix + line + places.line_end());
}

} // namespace

Edited set_value(const std::string& text, const Path& path, const std::string& value) {
  toml::parse_result read = toml::parse(text);
  const auto alone = read_alone(value);
  if (!read || !alone || path.empty()) {
    return tl::make_unexpected(!read ? std::string("the text is not TOML")
                                     : "no value as TOML writes it: " + value);
  }
  const Places places(text);
  toml::table root = std::move(read).table();
  const Way way = follow(root, path);
  const toml::node& put = *alone->get("value");
  if (way.node != nullptr && (way.node->is_table() != put.is_table() || path.back().element)) {
    return tl::make_unexpected(say(path, path.size()) +
                               " is a table, or an element of a list: name the key in it");
  }
  if (way.node != nullptr) {
    if (toml::table{{"value", *way.node}} == *alone) {
      return text;
    }
    const std::size_t from = places.at(way.node->source().begin);
    const std::string written = places.replace(from, places.at(way.node->source().end), value);
    way.table->insert_or_assign(path.back().key, put);
    return checked(written, root);
  }
  if (path.back().element || (way.depth + 1 < path.size() && path[way.depth].element)) {
    return tl::make_unexpected(say(path, path.size()) + " stands in a list that has no such element");
  }
  if (way.depth + 1 < path.size() && way.table->contains(path[way.depth].key)) {
    return tl::make_unexpected(say(path, way.depth + 1) + " is a value, and holds no keys");
  }
  std::string written;
  if (way.depth + 1 < path.size()) {
    const std::string heading = "[" + say(path, path.size() - 1) + "]";
    if (way.table->is_inline()) {
      return tl::make_unexpected("a table cannot be added inside { }: " + say(path, path.size()));
    }
    written = with_heading(places, place_for_heading(places, root, path), heading,
                           {written_key(path.back().key) + " = " + value});
  } else {
    written = add_key(places, way, path, value);
  }
  toml::table* table = way.table;
  for (std::size_t i = way.depth; i + 1 < path.size(); ++i) {
    table = table->insert(path[i].key, toml::table{}).first->second.as_table();
  }
  table->insert(path.back().key, put);
  return checked(written, root);
}

Edited remove_value(const std::string& text, const Path& path) {
  toml::parse_result read = toml::parse(text);
  if (!read || path.empty()) {
    return tl::make_unexpected(std::string("the text is not TOML"));
  }
  const Places places(text);
  toml::table root = std::move(read).table();
  const Way way = follow(root, path);
  if (way.node == nullptr) {
    return text;
  }
  std::string written;
  const bool under_heading = places.is_heading(way.node->source()) && !way.table->is_inline();
  if (way.table->is_inline()) {
    written = places.cut_inline(places.at(way.node_key->source().begin), places.at(way.node->source().end));
  } else if (under_heading) {
    written = places.cut_block(places.begin_of_line(places.at(way.node->source().begin)),
                               end_of_family(places, *way.node));
  } else {
    written = places.replace(places.begin_of_line(places.at(way.node_key->source().begin)),
                             end_of_family(places, *way.node), "");
  }
  if (path.back().element) {
    auto& list = *way.table->get(path.back().key)->as_array();
    list.erase(list.begin() + static_cast<std::ptrdiff_t>(*path.back().element));
    if (list.empty()) {
      way.table->erase(path.back().key);
    }
  } else {
    way.table->erase(path.back().key);
  }
  return checked(written, root);
}

Edited add_element(const std::string& text, const Path& path, const std::vector<std::string>& lines) {
  toml::parse_result read = toml::parse(text);
  if (!read || path.empty()) {
    return tl::make_unexpected(std::string("the text is not TOML"));
  }
  const Places places(text);
  toml::table root = std::move(read).table();
  const std::string written = with_heading(places, place_for_heading(places, root, path),
                                           "[[" + say(path, path.size()) + "]]", lines);
  std::string body;
  for (const auto& line : lines) {
    body += line + "\n";
  }
  toml::parse_result element = toml::parse(body);
  if (!element) {
    return tl::make_unexpected("not TOML: " + body);
  }
  toml::table* table = &root;
  for (std::size_t i = 0; i + 1 < path.size(); ++i) {
    toml::node* node = &table->insert(path[i].key, toml::table{}).first->second;
    node = element_of(node, path[i]);
    if (node == nullptr || !node->is_table()) {
      return tl::make_unexpected(say(path, i + 1) + " is no table");
    }
    table = node->as_table();
  }
  auto* list = table->insert(path.back().key, toml::array{}).first->second.as_array();
  if (list == nullptr) {
    return tl::make_unexpected(say(path, path.size()) + " is no list of tables");
  }
  list->push_back(std::move(element).table());
  return checked(written, root);
}

std::optional<std::string> value_at(const std::string& text, const Path& path) {
  toml::parse_result read = toml::parse(text);
  if (!read || path.empty()) {
    return std::nullopt;
  }
  const Places places(text);
  toml::table root = std::move(read).table();
  const Way way = follow(root, path);
  if (way.node == nullptr || places.is_heading(way.node->source()) ||
      (way.node->is_table() && !way.node->as_table()->is_inline())) {
    return std::nullopt;
  }
  const std::size_t from = places.at(way.node->source().begin);
  return text.substr(from, places.at(way.node->source().end) - from);
}

Path path_from(std::string_view words) {
  Path path;
  while (!words.empty()) {
    const auto dot = words.find('.');
    std::string_view part = words.substr(0, dot);
    words = dot == std::string_view::npos ? "" : words.substr(dot + 1);
    Step step;
    const auto bracket = part.find('[');
    step.key = std::string(part.substr(0, bracket));
    if (bracket != std::string_view::npos) {
      std::size_t number = 0;
      const auto digits = part.substr(bracket + 1, part.size() - bracket - 2);
      for (const char digit : digits) {
        if (digit < '0' || digit > '9') {
          return {};
        }
        number = number * 10 + static_cast<std::size_t>(digit - '0');
      }
      step.element = number;
    }
    if (step.key.empty() || (dot != std::string_view::npos && words.empty())) {
      return {};
    }
    path.push_back(std::move(step));
  }
  return path;
}

} // namespace matula::strict
