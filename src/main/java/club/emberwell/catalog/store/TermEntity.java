package club.emberwell.catalog.store;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.remark.Coded;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.List;

/** A term as stored; its spellings are rows of their own. */
@Entity
@Table(name = "term")
class TermEntity {
  @Id String id;
  String kind;
  String slug;
  String label;
  String parent;

  @Column(name = "responds_alike")
  boolean respondsAlike;

  String note;
  String hex;
  boolean deprecated;

  @Column(name = "replaced_by")
  String replacedBy;

  String origin;
  boolean edited;

  @Column(name = "file_hash")
  String fileHash;

  int version = 1;

  static String id(TermKind kind, String slug) {
    return kind.code() + ":" + slug;
  }

  static TermEntity of(Term term) {
    TermEntity entity = new TermEntity();
    entity.id = id(term.kind(), term.slug());
    entity.kind = term.kind().code();
    entity.slug = term.slug();
    entity.origin = term.origin();
    entity.take(term);
    return entity;
  }

  void take(Term term) {
    label = term.label();
    parent = term.parent();
    respondsAlike = term.respondsAlike();
    note = term.note();
    hex = term.hex();
    deprecated = term.deprecated();
  }

  Term toTerm(List<String> synonyms) {
    return new Term(
        Coded.of(TermKind.class, kind).orElseThrow(),
        slug,
        new Term.Words(label, synonyms, note),
        parent,
        respondsAlike,
        hex,
        new Term.Standing(deprecated, replacedBy, origin, version));
  }
}
