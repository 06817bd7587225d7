package org.geneticsrules.json;

import static org.geneticsrules.testing.Coats.DARK;
import static org.geneticsrules.testing.Coats.seen;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.answer.compared.Analysis;
import org.geneticsrules.answer.compared.HeldModel;
import org.geneticsrules.document.Node;
import org.geneticsrules.document.ObjectBuilder;
import org.geneticsrules.model.Model;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Coats;
import org.geneticsrules.trait.Confusion;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;

/** Invented analyses to freeze. */
final class FrozenSamples {

    private static final String VOCABULARY = """
            {"formatVersion": 0, "kind": "vocabulary", "id": "coats.names", "version": "1", "licence": "Apache-2.0",
             "region": "Nowhere", "catalogue": {"id": "coats", "version": "1"}, "facets": {"coat": {}},
             "names": {"cream": {"facet": "coat", "senses": {"any": {"looks": {"pale": {"coat": ["light"]}}}}}}}
            """;

    private static final String CAUTIONS = """
            {"formatVersion": 0, "kind": "cautions", "id": "coats.cautions", "version": "1",
             "cautions": {"always": {"trigger": {"always": true}, "line": "A line.", "date": "2026-11"}}}
            """;

    private FrozenSamples() {}

    /** Light is recessive, and rarer than the model says. */
    static Patch rarer() {
        return rarer("coats.rarer", Coats.recessive());
    }

    static Patch rarer(String id, Model base) {
        Node frequencies = new ObjectBuilder().with("D", "3/4").with("d", "1/4").build();
        return new Patch(
                id,
                "1",
                Optional.of("light is rarer"),
                base.reference(),
                ImmutableMap.of(),
                ImmutableMap.of("/populations/even/frequencies/A", frequencies),
                List.of(),
                ImmutableMap.of());
    }

    static HeldModel patched() {
        Model base = Coats.recessive();
        List<Patch> patches = List.of(rarer());
        return HeldModel.of(base, patches, Documents.reader().apply(base, patches));
    }

    /** Two litters of dark parents, one of them with a kit that was called cream. */
    static Pedigree litters() {
        var couple = Pedigree.builder("pair", "1").add(seen("sire", DARK)).add(seen("dam", DARK));
        Coats.litter(couple, "first", "", 5, 2, Ascertainment.complete());
        Pedigree before = Coats.litter(couple, "second", "", 6, 0, Ascertainment.unknown())
                .build();
        var all = Pedigree.builder("pair", "1");
        before.individuals()
                .values()
                .forEach(one ->
                        all.add(one.id().equals("second.1") ? one.with(CalledName.of("cream", "Nowhere")) : one));
        before.litters().values().forEach(all::add);
        return all.build();
    }

    /** A question that uses everything that may stand in one. */
    static Analysis everything() {
        HeldModel lethal = HeldModel.of(Coats.lethal());
        Pedigree named = litters();
        return new Analysis(
                Analysis.Kind.NAMED,
                HeldModel.of(Coats.recessive()),
                List.of(
                        patched(),
                        new HeldModel("lethal", lethal.base(), List.of(), lethal.model(), Probability.of(1, 2), 1)),
                List.of(Documents.reader().readCautions(Source.of("cautions", CAUTIONS))),
                named,
                List.of(Documents.reader().readVocabulary(Source.of("vocabulary", VOCABULARY), List.of(Coats.TRAITS))),
                new Analysis.Settings(
                        Optional.of("even"),
                        List.of("coat"),
                        Confusions.of(List.of(
                                new Confusion("coat", "dark", "light", Optional.empty(), Probability.of(1, 50)),
                                new Confusion(
                                        "coat",
                                        "light",
                                        "dark",
                                        Optional.of(LifeStage.atMoult(0)),
                                        Probability.of(1, 20)))),
                        999,
                        -7));
    }

    /** How well a litter of carriers goes with recessive light. */
    static Analysis fit() {
        return Analysis.of(Analysis.Kind.FIT, HeldModel.of(Coats.recessive()), Coats.ofCarriers(9, 3));
    }

    /** All rivals at hand, of which one knows nothing of the trait. */
    static Analysis atHand() {
        return Analysis.of(
                Analysis.Kind.AT_HAND,
                HeldModel.of(Coats.recessive()),
                Coats.ofCarriers(300, 150),
                HeldModel.of(Coats.lethal()),
                patched());
    }
}
