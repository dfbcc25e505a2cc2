#include "wire/told_object.h"

#include <string_view>

namespace keenfall::wire {

namespace {

std::string_view name_of(telling::Tone tone) {
  switch (tone) {
    case telling::Tone::settled:
      return "settled";
    case telling::Tone::not_settled:
      return "not_settled";
    case telling::Tone::plain:
      break;
  }
  return {};
}

Json table_json(const telling::Table& table) {
  Json object = {{"caption", table.caption}, {"columns", Json::array()}, {"rows", Json::array()}};
  for (const telling::Column& column : table.columns) {
    object["columns"].push_back({{"head", column.head},
                                 {"side", column.side == telling::Side::left ? "left" : "right"},
                                 {"drop_order", column.drop_order}});
  }
  for (const telling::Row& row : table.rows) {
    Json told = Json::object();
    put_text(told, "key", row.key);
    told["cells"] = row.cells;
    object["rows"].push_back(std::move(told));
  }
  object["columns_explained"] = table.columns_explained;
  object["footnotes"] = sentences_json(table.footnotes);
  return object;
}

Json section_json(const telling::Section& section) {
  Json object = {{"id", section.id}, {"heading", section.heading}};
  if (!section.lead.words.empty()) object["lead"] = sentence_json(section.lead);
  object["items"] = sentences_json(section.items);
  object["remarks"] = sentences_json(section.remarks);
  return object;
}

Json medium_json(const telling::MediumAnswers& medium) {
  Json object = {{"medium", medium.group}, {"on", medium.on}, {"answers", Json::array()}};
  for (const telling::Answer& answer : medium.answers) {
    object["answers"].push_back(
        {{"comparison", answer.comparison}, {"sentence", sentence_json(answer.sentence)}});
  }
  object["gathered"] = sentences_json(medium.gathered);
  object["remarks"] = sentences_json(medium.remarks);
  return object;
}

Json answers_json(const telling::Answers& answers) {
  Json object = Json::object();
  if (answers.instead) {
    object["instead"] = {{"lasting", sentences_json(answers.instead->lasting)},
                         {"why", sentence_json(answers.instead->why)},
                         {"reasons", sentences_json(answers.instead->reasons)}};
  }
  object["terms"] = sentence_json(answers.terms);
  object["media"] = Json::array();
  for (const telling::MediumAnswers& medium : answers.media) {
    object["media"].push_back(medium_json(medium));
  }
  object["across_media"] = sentences_json(answers.across_media);
  if (!answers.claim.words.empty()) object["claim"] = sentence_json(answers.claim);
  return object;
}

}  // namespace

Json sentence_json(const telling::Sentence& sentence) {
  Json object = {{"words", Json::array()}};
  for (const telling::Words& words : sentence.words) {
    Json part = {{"text", words.text}};
    put_text(part, "tone", std::string(name_of(words.tone)));
    object["words"].push_back(std::move(part));
  }
  put_text(object, "left_out", sentence.left_out);
  return object;
}

Json sentences_json(const std::vector<telling::Sentence>& sentences) {
  Json list = Json::array();
  for (const telling::Sentence& sentence : sentences) list.push_back(sentence_json(sentence));
  return list;
}

Json told_json(const telling::Told& told) {
  Json object = {{"title", told.title},
                 {"details", told.details},
                 {"answers", answers_json(told.answers)},
                 {"arms", table_json(told.arms)},
                 {"sections", Json::array()}};
  for (const telling::Section& section : told.sections) {
    object["sections"].push_back(section_json(section));
  }
  return object;
}

}  // namespace keenfall::wire
