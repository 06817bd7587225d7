package org.geneticsrules.vocabulary;

import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.trait.LifeStage;

/** The document form of a vocabulary: what is written to a file and what is hashed. Stateless and thread-safe. */
final class VocabularyDocument {

    private VocabularyDocument() {}

    static Node of(Vocabulary vocabulary) {
        ObjectBuilder evidence = new ObjectBuilder();
        vocabulary.evidence().values().forEach(support -> evidence.with(support.id(), evidence(support)));
        ObjectBuilder facets = new ObjectBuilder();
        vocabulary
                .facets()
                .values()
                .forEach(facet -> facets.with(
                        facet.id(),
                        new ObjectBuilder().with("title", facet.title()).build()));
        ObjectBuilder names = new ObjectBuilder();
        vocabulary.names().values().forEach(name -> names.with(name.word(), name(name)));
        return new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "vocabulary")
                .with("id", vocabulary.id())
                .with("version", vocabulary.version())
                .with("title", vocabulary.title())
                .with("licence", vocabulary.licence())
                .with("region", vocabulary.region())
                .with("language", vocabulary.language())
                .with("catalogue", vocabulary.catalogue().reference().toNode())
                .withAny("evidence", evidence)
                .with("facets", facets.build())
                .with("names", names.build())
                .build();
    }

    private static Node evidence(Evidence support) {
        return new ObjectBuilder()
                .with("grade", support.grade().word())
                .with("claim", support.claim())
                .with("sources", Node.texts(support.sources()))
                .withAny("dissent", support.dissent())
                .build();
    }

    private static Node name(Name name) {
        ObjectBuilder senses = new ObjectBuilder();
        name.senses().values().forEach(sense -> senses.with(sense.id(), sense(sense)));
        return new ObjectBuilder()
                .with("facet", name.facet())
                .withAny("synonyms", name.synonyms())
                .with("note", name.note())
                .with("evidence", name.evidence())
                .with("senses", senses.build())
                .build();
    }

    private static Node sense(Sense sense) {
        ObjectBuilder looks = new ObjectBuilder();
        sense.looks().forEach((id, look) -> looks.with(id, look.toNode()));
        ObjectBuilder node = new ObjectBuilder()
                .with("looks", looks.build())
                .with("from", sense.period().from().map(PartialDate::toString))
                .with("to", sense.period().to().map(PartialDate::toString));
        sense.judgeableFrom().ifPresent(stage -> node.with("judgeableFrom", stage(stage)));
        return node.with("note", sense.note())
                .with("evidence", sense.evidence())
                .build();
    }

    private static Node stage(LifeStage stage) {
        ObjectBuilder node = new ObjectBuilder();
        stage.weeks().ifPresent(weeks -> node.with("weeks", Node.number(weeks)));
        stage.moult().ifPresent(moult -> node.with("moult", Node.number(moult)));
        return node.build();
    }
}
