"""The tables of the embedded book and their guards, version 2."""

VERSION = 2
APPLICATION = 0x494E544B  # application_id: "INTK"

_JOURNAL = (
    """create table event(
        n integer primary key,
        case_id text not null,
        seq integer not null check(seq >= 1),
        at text not null,
        kind text not null,
        body text not null check(json_valid(body)),
        unique(case_id, seq)) strict""",
    # Message texts lie apart, so that a person can be forgotten without touching what was made of their words.
    """create table message(
        case_id text not null,
        seq integer not null,
        text text not null,
        primary key(case_id, seq)) strict""",
)

# Each content once, however many cases name it; null where it was dropped, or not sent along with a case.
_FILE = """create table file(
    sha text primary key,
    bytes integer not null,
    content blob,
    check(content is null or length(content) = bytes)) strict"""

# Only these two may change freely. `entry` is an index: it can be dropped and written anew. Its counts and times are
# kept by a trigger, so that no list ever reads the journal; `sought` is how many events the search words were made of.
_INDEX = (
    """create table entry(
        id integer primary key,
        case_id text not null unique,
        begun text not null,
        updated text not null,
        last integer not null,
        events integer not null,
        archived integer not null,
        sought integer not null default 0,
        title text not null default '',
        standing text not null default '',
        best text not null default '',
        waiting_for text not null default '',
        since text not null default '',
        due text not null default '',
        open integer not null default 0,
        words text not null default '') strict""",
    """create table draft(
        case_id text primary key,
        text text not null,
        at text not null) strict""",
)

# The first serves every list: newest first, with all that a list can be narrowed by.
_PATHS = (
    "create index entry_listed on entry(updated, last, archived, open, due, best, standing, waiting_for)",
    "create index entry_unsought on entry(id) where sought < events",
    "create index event_first on event(case_id) where seq = 1",
    "create index event_attached on event(json_extract(body, '$.file')) where kind = 'attached'",
)

# Places in a text, from 0 on, one row each.
_PLACES = "json_each('[' || replace(hex(zeroblob(length(old.{text}))), '00', '0,') || '0]') p"

# Forgetting a person is the only change of what was kept: the same text with blanks in place of some signs.
_ONLY_BLANKED = f"""length(new.{{text}}) = length(old.{{text}}) and instr(new.{{text}}, char(0)) = 0
    and not exists(select 1 from {_PLACES}
        where substr(new.{{text}}, p.key + 1, 1) not in (' ', substr(old.{{text}}, p.key + 1, 1)))"""

_ONLY_BODY_BLANKED = f"""new.n = old.n and new.case_id = old.case_id and new.seq = old.seq and new.at = old.at
    and new.kind = old.kind and {_ONLY_BLANKED.format(text="body")}"""

_ONLY_TEXT_BLANKED = f"""new.case_id = old.case_id and new.seq = old.seq and {_ONLY_BLANKED.format(text="text")}"""

# A "replace" runs no delete guard, so the insert guards refuse every row that is there already.
_GUARDS = (
    """create trigger event_in_order before insert on event
       when new.seq != (select coalesce(max(seq), 0) + 1 from event where case_id = new.case_id)
         or exists(select 1 from event where n = new.n)
       begin select raise(abort, 'append only: out of order'); end""",
    f"""create trigger event_stays before update on event when not ({_ONLY_BODY_BLANKED})
       begin select raise(abort, 'append only'); end""",
    "create trigger event_kept before delete on event begin select raise(abort, 'append only'); end",
    """create trigger message_once before insert on message
       when exists(select 1 from message where case_id = new.case_id and seq = new.seq)
       begin select raise(abort, 'append only'); end""",
    f"""create trigger message_stays before update on message when not ({_ONLY_TEXT_BLANKED})
       begin select raise(abort, 'append only'); end""",
    "create trigger message_kept before delete on message begin select raise(abort, 'append only'); end",
    """create trigger file_once before insert on file when exists(select 1 from file where sha = new.sha)
       begin select raise(abort, 'append only'); end""",
    """create trigger file_stays before update on file
       when not (new.sha = old.sha and (old.content is null or (new.content is null and new.bytes = old.bytes)))
       begin select raise(abort, 'append only'); end""",
    "create trigger file_kept before delete on file begin select raise(abort, 'append only'); end",
)

# A line that was dropped comes back as the journal tells it.
_UPKEEP = (
    """create trigger event_counted after insert on event begin
       insert into entry(case_id, begun, updated, last, events, archived)
         values (new.case_id, (select at from event where case_id = new.case_id and seq = 1), new.at, new.n, new.seq,
           case when exists(select 1 from entry where case_id = new.case_id) then 0
             else coalesce((select kind = 'archived' from event where case_id = new.case_id
               and kind in ('archived', 'restored') order by seq desc limit 1), 0) end)
         on conflict(case_id) do update set updated = new.at, last = new.n, events = new.seq,
           archived = case new.kind when 'archived' then 1 when 'restored' then 0 else archived end;
       end""",
)

# What version 1 had and this one has in another form.
_GIVEN_UP = (
    "drop index shelf",
    "drop trigger event_stays",
    "drop trigger message_stays",
    "alter table entry rename to entry_before",
)

_TAKEN_OVER = (
    """update entry set (title, standing, best, waiting_for, since, words) =
         (select title, standing, best, waiting_for, since, words from entry_before b where b.case_id = entry.case_id)
       where case_id in (select case_id from entry_before)""",
    "drop table entry_before",
)

# The journal is the truth: the counts and times of cases that have no line in the index yet.
COUNTED = """insert into entry(case_id, begun, updated, last, events, archived)
    select c.case_id, first.at, last.at, last.n, c.seq, coalesce((select s.kind = 'archived' from event s
        where s.case_id = c.case_id and s.kind in ('archived', 'restored') order by s.seq desc limit 1), 0)
    from (select case_id, max(seq) as seq from event group by case_id) c
    join event first on first.case_id = c.case_id and first.seq = 1
    join event last on last.case_id = c.case_id and last.seq = c.seq
    where c.case_id not in (select case_id from entry) order by last.n"""

NEW_BOOK = (*_JOURNAL, _FILE, *_INDEX, *_PATHS, *_GUARDS, *_UPKEEP)

_OLD_GUARDS = tuple(
    guard for guard in _GUARDS if "event_stays" in guard or "message_stays" in guard or "trigger file_" in guard
)

FROM_1 = (*_GIVEN_UP, _FILE, *_INDEX, *_PATHS, *_OLD_GUARDS, *_UPKEEP, COUNTED, *_TAKEN_OVER)
