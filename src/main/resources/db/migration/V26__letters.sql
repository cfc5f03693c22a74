-- Where the receiver of a letter ends letters like it; null = nothing to end.
alter table mail_outbox add column unsubscribe text;
