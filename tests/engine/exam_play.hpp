#pragma once

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/wait.h>
#include <unistd.h>

namespace matula::tests {

namespace fs = std::filesystem;
using Catch::Matchers::Contains;

inline const fs::path root = MATULA_SOURCE_DIR;

inline std::string slurp(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

inline void spill(const fs::path& file, const std::string& text) {
  std::ofstream(file, std::ios::binary) << text;
}

struct Answer {
  int code = -1;
  std::string out;
  std::string err;
  [[nodiscard]] nlohmann::json json() const {
    INFO(err + out);
    REQUIRE(code == 0);
    return nlohmann::json::parse(out);
  }
};

/// A folder in which the whole examination is played.
struct Played {
  fs::path folder;

  explicit Played(const std::string& name)
      : folder(fs::temp_directory_path() / (name + "_" + std::to_string(::getpid()))) {
    fs::remove_all(folder);
    for (const char* part : {"cards", "sittings", "returned", "sheets"}) {
      fs::create_directories(folder / part);
    }
  }
  ~Played() {
    std::error_code ignored;
    fs::remove_all(folder, ignored);
  }
  Played(const Played&) = delete;
  Played& operator=(const Played&) = delete;

  [[nodiscard]] Answer call(const std::string& words) const {
    const std::string line = "cd " + folder.string() + " && MATULA_ASSETS=" + (root / "assets").string() +
                             " DISPLAY= " + MATULA_PROGRAM + " " + words + " >out 2>err </dev/null";
    const int status = std::system(line.c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, slurp(folder / "out"), slurp(folder / "err")};
  }

  [[nodiscard]] Answer sit(const std::string& who, const std::string& session,
                           const std::string& steps) const {
    return call("sit spring.pack " + steps + " --device " + who + ".device --session " + session +
                " --case unknown-1 -o sittings --passphrase-file class --json");
  }
};

} // namespace matula::tests
