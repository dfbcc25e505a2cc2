#include "page/told_html.h"

#include <string_view>
#include <vector>

namespace keenfall::page {

namespace {

void add_paragraph(Html& html, const telling::Sentence& sentence, std::string_view of_class) {
  html.open("p", {{"class", of_class}});
  add_sentence(html, sentence);
  html.close();
}

void add_list(Html& html, const std::vector<telling::Sentence>& items) {
  if (items.empty()) return;
  html.open("ul");
  for (const telling::Sentence& item : items) {
    html.open("li");
    add_sentence(html, item);
    html.close();
  }
  html.close();
}

void add_no_answer(Html& html, const telling::NoAnswer& instead) {
  for (const telling::Sentence& sentence : instead.lasting) add_paragraph(html, sentence, "answer");
  add_paragraph(html, instead.why, "answer");
  add_list(html, instead.reasons);
}

}  // namespace

void add_sentence(Html& html, const telling::Sentence& sentence) {
  for (const telling::Words& words : sentence.words) {
    switch (words.tone) {
      case telling::Tone::plain:
        html.text(with_units_kept(words.text));
        break;
      case telling::Tone::settled:
        html.element("span", words.text, {{"class", "settled"}});
        break;
      case telling::Tone::not_settled:
        html.element("span", words.text, {{"class", "not-settled"}});
        break;
    }
  }
}

void add_section(Html& html, const telling::Section& section, std::string_view heading) {
  html.element(heading, section.heading);
  if (!section.lead.words.empty()) add_paragraph(html, section.lead, "lead");
  add_list(html, section.items);
  for (const telling::Sentence& remark : section.remarks) add_paragraph(html, remark, "quiet");
}

void add_answers(Html& html, const telling::Answers& answers, std::string_view heading) {
  if (!answers.terms.words.empty()) add_paragraph(html, answers.terms, "quiet");
  if (answers.instead) {
    add_no_answer(html, *answers.instead);
    return;
  }
  for (const telling::MediumAnswers& medium : answers.media) {
    html.element(heading, medium.on);
    for (const telling::Answer& answer : medium.answers) {
      add_paragraph(html, answer.sentence, "answer");
    }
    add_list(html, medium.gathered);
    for (const telling::Sentence& remark : medium.remarks) add_paragraph(html, remark, "quiet");
  }
  if (!answers.across_media.empty()) {
    html.element(heading, "Across media");
    for (const telling::Sentence& sentence : answers.across_media) {
      add_paragraph(html, sentence, "answer");
    }
  }
  add_paragraph(html, answers.claim, "claim");
}

}  // namespace keenfall::page
