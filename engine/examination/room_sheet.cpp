#include "engine/examination/room_sheet.hpp"

namespace matula::examination {

namespace {

std::string rule() {
  return std::string(72, '-') + "\n";
}

std::string padded(const std::string& words, std::size_t width) {
  return words.size() < width ? words + std::string(width - words.size(), ' ') : words + " ";
}

} // namespace

std::string room_sheet(const Pack& pack, const std::vector<StudentCases>& students,
                       const std::string& passphrase, const std::string& nonce) {
  constexpr std::size_t name_width = 28;
  constexpr std::size_t label_width = 14;
  std::string text = "Matula: sheet for the examination room\n" + rule();
  text += "Examination     " + pack.head.title + "\n";
  text += "Lasts           " + std::to_string(pack.head.minutes) + " minutes\n";
  text += "Fingerprint     " + fingerprint(pack) + "   (each machine shows it; compare)\n";
  text += "Delete after    " + pack.head.delete_after + "\n\n";
  text += "Keep everything below this line to yourself until the examination begins.\n" + rule();
  text += "Class passphrase    " + passphrase + "\n";
  text += "Session code        " + nonce + "\n\n";
  text += "Read both out when all are seated. The letters 0, 1 and 8 do not occur.\n" + rule();
  text += "Closing codes: each learner copies what the screen shows after handing in. Type them\n"
          "into a file, a line each: pseudonym,case,code\n\n";
  text += padded("pseudonym", name_width) + padded("case", label_width) + "closing code\n";
  for (const auto& student : students) {
    for (const auto& one : student.cases) {
      text += padded(student.pseudonym, name_width) + padded(one.label, label_width) + "____-____\n";
    }
  }
  return text;
}

} // namespace matula::examination
