// A change to a TOML text changes its own line and nothing else.
#include "engine/strict/edit.hpp"

#include "engine/strict/file.hpp"
#include "engine/strict/table.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <sstream>

using namespace matula::strict;

namespace {

const std::filesystem::path scenarios = MATULA_SOURCE_DIR "/scenarios";

std::vector<std::filesystem::path> all_scenarios() {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(scenarios)) {
    if (entry.path().extension() == ".toml") {
      files.push_back(entry.path());
    }
  }
  return files;
}

std::string read(const std::filesystem::path& file) {
  std::string text;
  REQUIRE(read_text(file, text));
  return text;
}

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream in(text);
  for (std::string line; std::getline(in, line);) {
    lines.push_back(line);
  }
  return lines;
}

int lines_that_differ(const std::string& one, const std::string& other) {
  const auto a = lines_of(one);
  const auto b = lines_of(other);
  REQUIRE(a.size() == b.size());
  int differ = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    differ += a[i] == b[i] ? 0 : 1;
  }
  return differ;
}

std::string set(const std::string& text, const std::string& path, const std::string& value) {
  const auto edited = set_value(text, path_from(path), value);
  if (!edited) {
    FAIL(path << ": " << edited.error());
  }
  return *edited;
}

/// Every path of the tables of a case that hold single values or lists.
std::vector<std::string> paths_of(const std::string& text) {
  std::vector<std::string> paths;
  File file(text, "case.toml");
  const auto add = [&](const Table& table, const std::string& prefix) {
    for (const auto& key : table.keys()) {
      if (value_at(text, path_from(prefix + key))) {
        paths.push_back(prefix + key);
      }
    }
  };
  const auto root = file.root();
  add(root, "");
  for (const char* section :
       {"patient", "specimen", "bench", "asked", "collection", "marking", "tolerances", "weights"}) {
    if (const auto table = root.table_if_any(section)) {
      add(*table, std::string(section) + ".");
      for (const char* inner : {"dissolved", "solids", "cells", "infection", "bottle_age"}) {
        if (const auto deeper = table->table_if_any(inner)) {
          add(*deeper, std::string(section) + "." + inner + ".");
        }
      }
      const auto legs = table->tables_or_none("leg");
      for (std::size_t i = 0; i < legs.size(); ++i) {
        add(legs[i], std::string(section) + ".leg[" + std::to_string(i) + "].");
      }
    }
  }
  const auto decisions = root.tables_or_none("decision");
  for (std::size_t i = 0; i < decisions.size(); ++i) {
    const std::string prefix = "decision[" + std::to_string(i) + "].";
    add(decisions[i], prefix);
    add(decisions[i].table("options"), prefix + "options.");
  }
  return paths;
}

} // namespace

TEST_CASE(
    "every case saved without a change is the same to the byte, and with one change differs in one line") {
  int changed = 0;
  for (const auto& file : all_scenarios()) {
    const auto text = read(file);
    for (const auto& path : paths_of(text)) {
      INFO(file << " " << path);
      const auto value = value_at(text, path_from(path)).value();
      CHECK(set(text, path, value) == text);
      if (value.find('\n') != std::string::npos) {
        continue; // A story of several lines.
      }
      const std::string other = value.front() == '['   ? "[\"x\"]"
                                : value.front() == '"' ? "\"quite another\""
                                                       : "-77";
      const auto edited = set(text, path, other);
      CHECK(lines_that_differ(text, edited) == 1);
      CHECK(value_at(edited, path_from(path)) == other);
      CHECK(set(edited, path, value) == text);
      ++changed;
    }
  }
  CHECK(changed > 2000);
}

TEST_CASE("a key that is not there is added to its table, and can be taken out again") {
  for (const auto& file : all_scenarios()) {
    INFO(file);
    const auto text = read(file);
    for (const std::string path :
         {"specimen.dissolved.zzz", "zzz", "bench.zzz", "specimen.zzz", "decision[0].zzz"}) {
      if (path.front() == 'd' && text.find("[[decision]]") == std::string::npos) {
        continue;
      }
      const auto edited = set(text, path, "1");
      CHECK(lines_of(edited).size() == lines_of(text).size() + 1);
      CHECK(value_at(edited, path_from(path)) == "1");
      CHECK(remove_value(edited, path_from(path)).value() == text);
    }
    const auto edited = set(text, "specimen.zzz.key", "\"value\"");
    CHECK(edited.find("\n[specimen.zzz]\nkey = \"value\"\n") != std::string::npos);
    CHECK(edited.find("[specimen.zzz]") < edited.find("[bench]"));
    CHECK(remove_value(edited, path_from("specimen.zzz")).value() == text);
  }
}

TEST_CASE("remarks, order, ends of lines, inline tables and dotted keys hold") {
  const std::string text =
      "# head µ\r\ntitle = \"T\"   # a title\r\nspecimen.ph = 6.0 # sour\r\n"
      "specimen.\"dis solved\".urea = '2 µmol'\r\nq = { a = 1, b.c = \"z\" } # inline\r\n"
      "list = [ # of things\r\n  \"one\", # first\r\n  \"two\",\r\n]\r\n\r\n[x.y]\r\n  deep = true\r\n";
  CHECK(set(text, "specimen.ph", "7.25").find("specimen.ph = 7.25 # sour\r\n") != std::string::npos);
  CHECK(set(text, "specimen.ph", "6") != text); // A whole number is another value than 6.0.
  CHECK(set(text, "specimen.ph", "6.00") == text);
  CHECK(set(text, "specimen.yellow", "0.2").find("urea = '2 µmol'\r\nspecimen.yellow = 0.2\r\nq =") !=
        std::string::npos);
  CHECK(set(text, "q.a", "22").find("q = { a = 22, b.c = \"z\" } # inline") != std::string::npos);
  CHECK(set(text, "q.d", "true").find("q = { a = 1, b.c = \"z\", d = true } # inline") != std::string::npos);
  CHECK(remove_value(text, path_from("q.a")).value().find("q = { b.c = \"z\" } # inline") !=
        std::string::npos);
  CHECK(set(text, "list", "[\"one\"]").find("list = [\"one\"]\r\n\r\n[x.y]") != std::string::npos);
  CHECK(set(text, "x.own", "1").find("\r\n[x]\r\nown = 1\r\n\r\n[x.y]\r\n") != std::string::npos);
  CHECK(set(text, "x.y.more", "1").find("  deep = true\r\n  more = 1\r\n") != std::string::npos);
  const auto all = set(set(text, "title", "\"U µ\""), "x.y.deep", "false");
  CHECK(lines_that_differ(text, all) == 2);
  CHECK(all.find("title = \"U µ\"   # a title\r\n") != std::string::npos);
}

TEST_CASE("lists of tables grow and shrink") {
  const std::string text =
      "a = 1\n[[leg]]\nhours = 1\n\n[[leg]]\nhours = 2\n[leg.more]\nz = 1\n\n# about b\n[b]\nc = 1\n";
  const auto grown = add_element(text, path_from("leg"), {"hours = 3"}).value();
  CHECK(grown.find("z = 1\n\n[[leg]]\nhours = 3\n\n# about b\n[b]") != std::string::npos);
  CHECK(value_at(grown, path_from("leg[2].hours")) == "3");
  CHECK(remove_value(grown, path_from("leg[2]")).value() == text);
  const auto shrunk = remove_value(text, path_from("leg[0]")).value();
  CHECK(value_at(shrunk, path_from("leg[0].hours")) == "2");
  CHECK(set(text, "leg[1].hours", "5") ==
        "a = 1\n[[leg]]\nhours = 1\n\n[[leg]]\nhours = 5\n[leg.more]\nz = 1\n\n# about b\n[b]\nc = 1\n");
}

TEST_CASE("what cannot be changed in place is refused and said") {
  const std::string text = "a = 1\n[[leg]]\nhours = 1\n";
  CHECK_FALSE(set_value(text, path_from("leg[4].hours"), "1"));
  CHECK_FALSE(set_value(text, path_from("a"), "1 2"));
  CHECK_FALSE(set_value(text, path_from("a"), "1\nb = 2"));
  CHECK_FALSE(set_value("a = ", path_from("a"), "1"));
  CHECK_FALSE(set_value(text, path_from("a.b"), "1"));
  CHECK(path_from("a..b").empty());
  CHECK(path_from("a[x]").empty());
  CHECK(set("no_end = 1", "b", "2") == "no_end = 1\nb = 2\n");
}
