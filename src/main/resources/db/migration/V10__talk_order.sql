-- Lists of talk stand by the date they show: when a question was asked or last answered.
create index talk_latest on talk_entry (kind, active_at desc, number desc) where state = 'LIVE';
drop index talk_newest;

drop index talk_unanswered;
create index talk_unanswered on talk_entry (active_at desc, number desc)
  where state = 'LIVE' and kind = 'QUESTION' and answers = 0;

-- Answers stand by when they were given, which for carried-over ones is not when they came here.
drop index talk_answers;
create index talk_answers on talk_entry (question_id, created_at, number)
  where question_id is not null;
