#pragma once

#include <map>
#include <set>
#include <string>

namespace matula::strict {

/// While it lives, notes every key that is asked of any strict file on this thread: what a reader knows, for
/// comparing it with what is written about it. One at a time.
class Listening {
public:
  Listening();
  ~Listening();
  Listening(const Listening&) = delete;
  Listening& operator=(const Listening&) = delete;

  /// Keys by the path of their table: "" for the root, "a.b", "list[]".
  [[nodiscard]] const std::map<std::string, std::set<std::string>>& heard() const { return heard_; }

private:
  friend void tell_listener(const void* document, const void* table, const std::string& key);
  std::map<std::string, std::set<std::string>> heard_;
};

/// Called by the tables: `document` and `table` are the parser's.
void tell_listener(const void* document, const void* table, const std::string& key);

} // namespace matula::strict
