#include "engine/command/exam_files.hpp"

#include "engine/command/exit_codes.hpp"
#include "engine/seal/frame.hpp"
#include "engine/seal/passphrase.hpp"

#include <fstream>
#include <iostream>
#include <termios.h>
#include <unistd.h>

namespace matula::command {

namespace {

/// Turns the terminal's echo off while it lives.
class Unseen {
public:
  Unseen() {
    if (::tcgetattr(STDIN_FILENO, &before_) == 0) {
      termios now = before_;
      now.c_lflag &= ~static_cast<tcflag_t>(ECHO);
      changed_ = ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &now) == 0;
    }
  }
  ~Unseen() {
    if (changed_) {
      ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &before_);
    }
  }
  Unseen(const Unseen&) = delete;
  Unseen& operator=(const Unseen&) = delete;

private:
  termios before_{};
  bool changed_ = false;
};

} // namespace

seal::Maybe<std::string> ask_passphrase(const std::string& file, const std::string& whose) {
  std::string words;
  if (file.empty() && ::isatty(STDIN_FILENO) == 1) {
    std::cerr << whose << " passphrase: " << std::flush;
    const Unseen unseen;
    std::getline(std::cin, words);
    std::cerr << '\n';
  } else if (file.empty()) {
    return seal::refuse("passphrase", "no terminal to ask for it", "--passphrase-file FILE");
  } else if (file == "-") {
    std::getline(std::cin, words);
  } else {
    std::ifstream in(file);
    if (!in) {
      return seal::refuse(file, "no readable file", "a file whose first line is the passphrase");
    }
    std::getline(in, words);
  }
  if (!words.empty() && words.back() == '\r') {
    words.pop_back();
  }
  if (words.empty()) {
    return seal::refuse(file.empty() ? "passphrase" : file, "no passphrase",
                        "a passphrase on the first line");
  }
  return words;
}

seal::Effort effort_of(const std::string& word) {
  return word == "light" ? seal::light : word == "heavy" ? seal::heavy : seal::everyday;
}

seal::AskPassphrase ask_for_own(const std::string& passphrase_file) {
  return [passphrase_file]() -> seal::Maybe<seal::Secret> {
    auto words = ask_passphrase(passphrase_file, "Your");
    if (!words) {
      return tl::make_unexpected(words.error());
    }
    seal::Secret passphrase = seal::passphrase_bytes(*words);
    seal::wipe(*words);
    return passphrase;
  };
}

seal::Maybe<seal::InstructorKeys> unlock(const std::string& keys, const std::string& passphrase_file) {
  return seal::load_keys(keys, ask_for_own(passphrase_file));
}

int tell(const scenario::Problems& problems, std::ostream& err) {
  err << scenario::to_text(problems) << '\n';
  return exit_bad_input;
}

} // namespace matula::command
