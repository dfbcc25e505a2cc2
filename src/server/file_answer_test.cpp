#include "server/file_answer.h"

#include <gtest/gtest.h>

#include <string>

namespace keenfall::server {
namespace {

std::string disposition_of(const std::string& name) {
  const HttpResponse answer =
      file_answer({.name = name, .content_type = "text/csv", .bytes = "a,b\n"});
  EXPECT_EQ(answer.body, "a,b\n");
  EXPECT_EQ(answer.content_type, "text/csv");
  EXPECT_EQ(answer.headers.size(), 1U);
  EXPECT_EQ(answer.headers.front().name, "Content-Disposition");
  return answer.headers.front().text;
}

TEST(AFileAnswer, SaysItsNameForThoseWhoReadAsciiAndForOthers) {
  EXPECT_EQ(disposition_of("spring.csv"),
            "attachment; filename=\"spring.csv\"; filename*=UTF-8''spring.csv");
  EXPECT_EQ(disposition_of("für \"A\"\r\n.csv"),
            "attachment; filename=\"f__r__A___.csv\"; "
            "filename*=UTF-8''f%C3%BCr%20%22A%22%0D%0A.csv");
}

TEST(AFileAnswer, CutsALongNameAndKeepsItsEnding) {
  EXPECT_EQ(disposition_of(std::string(150, 'n')),
            disposition_of(std::string(150, 'n') + std::string(1000, 'n')));
  EXPECT_EQ(disposition_of(std::string(16'400, 'n') + ".csv"),
            disposition_of(std::string(146, 'n') + ".csv"));
}

TEST(AFileAnswer, CutsALongNameBetweenCharacters) {
  std::string name;
  for (int i = 0; i < 16'400; ++i) name += "é";
  std::string kept;
  for (int i = 0; i < 72; ++i)
    kept += "é";  // 144 bytes; another would be one too many beside .json

  EXPECT_EQ(disposition_of(name + ".json"), disposition_of(kept + ".json"));
}

}  // namespace
}  // namespace keenfall::server
