package org.geneticsrules.pedigree;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.vocabulary.PartialDate;

/** The document form of a pedigree. Stateless and thread-safe. */
public final class PedigreeDocument {

    private PedigreeDocument() {}

    /**
     * Returns the document that states a pedigree.
     *
     * @param pedigree a pedigree
     * @return a document of kind {@code pedigree}, format version 0
     */
    public static Node of(Pedigree pedigree) {
        ObjectBuilder document = new ObjectBuilder()
                .with("formatVersion", Node.number(0))
                .with("kind", "pedigree")
                .with("id", pedigree.id())
                .with("version", pedigree.version())
                .with("title", pedigree.title());
        pedigree.catalogue().ifPresent(reference -> document.with("catalogue", reference.toNode()));
        ObjectBuilder individuals = new ObjectBuilder();
        pedigree.individuals().values().forEach(one -> individuals.with(one.id(), individual(one)));
        ObjectBuilder litters = new ObjectBuilder();
        pedigree.litters().values().forEach(one -> litters.with(one.id(), litter(one)));
        document.with("individuals", individuals.build()).withAny("litters", litters);
        if (!pedigree.corrections().isEmpty()) {
            document.with(
                    "corrections",
                    list(pedigree.corrections().stream()
                            .map(PedigreeDocument::correction)
                            .toList()));
        }
        return document.build();
    }

    private static Node individual(Individual one) {
        ObjectBuilder node = new ObjectBuilder().with("sex", one.sex().map(Sex::word));
        node.with("born", date(one.born())).with("population", one.population());
        withAny(
                node,
                "observations",
                one.observations().stream()
                        .filter(seen -> seen.name().isEmpty())
                        .map(PedigreeDocument::observation)
                        .toList());
        withAny(node, "names", one.names().stream().map(PedigreeDocument::name).toList());
        withAny(node, "tests", one.tests().stream().map(PedigreeDocument::test).toList());
        withAny(
                node,
                "hearing",
                one.hearing().stream().map(PedigreeDocument::hearing).toList());
        return one.fertility() == Fertility.UNKNOWN
                ? node.build()
                : node.with("fertility", one.fertility().word()).build();
    }

    private static Node observation(Observation seen) {
        ObjectBuilder node = new ObjectBuilder().with("date", date(seen.date()));
        if (!seen.stage().equals(LifeStage.unstated())) {
            node.with("stage", stage(seen.stage()));
        }
        return node.with("light", seen.light())
                .with("observer", seen.observer())
                .with(
                        "looks",
                        list(seen.looks().stream().map(PedigreeDocument::look).toList()))
                .build();
    }

    private static Node name(CalledName name) {
        ObjectBuilder node = new ObjectBuilder()
                .with("word", name.word())
                .with("vocabulary", name.vocabulary())
                .with("facet", name.facet())
                .with("date", name.date().map(PartialDate::toString));
        if (!name.stage().equals(LifeStage.unstated())) {
            node.with("stage", stage(name.stage()));
        }
        return node.with("light", name.light())
                .with("observer", name.observer())
                .build();
    }

    private static Node stage(LifeStage stage) {
        ObjectBuilder node = new ObjectBuilder();
        stage.weeks().ifPresent(weeks -> node.with("weeks", Node.number(weeks)));
        stage.moult().ifPresent(moult -> node.with("moult", Node.number(moult)));
        return node.with("season", stage.season()).build();
    }

    private static Node look(Phenotype look) {
        ObjectBuilder node = new ObjectBuilder();
        look.asMap().forEach(node::with);
        return node.build();
    }

    private static Node test(GenotypeTest test) {
        ObjectBuilder node = new ObjectBuilder()
                .with("date", date(test.date()))
                .with("locus", test.locus())
                .with("result", Node.texts(test.result()));
        return test.error().isZero()
                ? node.build()
                : node.with("error", chance(test.error())).build();
    }

    private static Node hearing(HearingTest test) {
        return new ObjectBuilder()
                .with("date", date(test.date()))
                .with("left", test.left().word())
                .with("right", test.right().word())
                .build();
    }

    private static Node litter(Litter litter) {
        ObjectBuilder node = new ObjectBuilder().with("dam", litter.dam());
        if (litter.sires() instanceof Paternity.Known known) {
            node.with("sire", known.sire());
        } else if (litter.sires() instanceof Paternity.Candidates several) {
            node.with("sires", candidates(several));
        }
        node.with("born", date(litter.born()));
        litter.bornCount().ifPresent(count -> node.with("bornCount", Node.number(count)));
        litter.scoredCount().ifPresent(count -> node.with("scoredCount", Node.number(count)));
        node.with("fosterDam", litter.fosterDam()).withAny("kits", litter.kits());
        ascertainment(litter.ascertainment()).ifPresent(how -> node.with("ascertainment", how));
        return node.build();
    }

    /** None if nobody wrote it down. */
    private static Optional<Node> ascertainment(Ascertainment how) {
        if (how instanceof Ascertainment.Complete) {
            return Optional.of(Node.text("complete"));
        }
        return Sign.of(how).map(sign -> {
            Sighting seen = sign.sighting();
            ObjectBuilder node = new ObjectBuilder().with("look", look(seen.look()));
            if (!seen.stage().equals(LifeStage.unstated())) {
                node.with("stage", stage(seen.stage()));
            }
            node.with("light", seen.light());
            if (how instanceof Ascertainment.Probands some) {
                node.with("chance", chance(some.chance()));
                some.count().ifPresent(count -> node.with("count", Node.number(count)));
            }
            return new ObjectBuilder().with(sign.key(), node.build()).build();
        });
    }

    private static Node candidates(Paternity.Candidates several) {
        return new ObjectBuilder()
                .with("perKit", Node.flag(several.perKit()))
                .with(
                        "candidates",
                        list(several.candidates().stream()
                                .map(candidate -> new ObjectBuilder()
                                        .with("male", candidate.male())
                                        .with("population", candidate.population())
                                        .with("share", chance(candidate.share()))
                                        .build())
                                .toList()))
                .build();
    }

    private static Node correction(Correction correction) {
        return new ObjectBuilder()
                .with("date", correction.date().toString())
                .with("by", correction.by())
                .with("reason", correction.reason())
                .with(
                        "changes",
                        list(correction.changes().stream()
                                .map(PedigreeDocument::change)
                                .toList()))
                .build();
    }

    private static Node change(Change change) {
        ObjectBuilder node = new ObjectBuilder();
        if (change instanceof Change.OfIndividual one) {
            node.with("individual", one.id());
            one.before().ifPresent(before -> node.with("before", individual(before)));
            one.after().ifPresent(after -> node.with("after", individual(after)));
        } else if (change instanceof Change.OfLitter one) {
            node.with("litter", one.id());
            one.before().ifPresent(before -> node.with("before", litter(before)));
            one.after().ifPresent(after -> node.with("after", litter(after)));
        }
        return node.build();
    }

    private static Optional<String> date(Optional<LocalDate> date) {
        return date.map(LocalDate::toString);
    }

    private static Node chance(Probability chance) {
        return Node.text(chance.toString());
    }

    private static void withAny(ObjectBuilder node, String name, List<Node> items) {
        if (!items.isEmpty()) {
            node.with(name, list(items));
        }
    }

    private static Node list(List<Node> items) {
        return new Node.ListNode(items);
    }
}
