package org.geneticsrules.cross;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.LocusWeights;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Sex;

/**
 * What the kits of every two parents express at each locus of a diagram, as tables by the parents' genotypes, where each kit has a
 * quarter of each union of gametes at each locus, whatever its sex and its other loci: autosomal loci in no linkage group, without
 * mutation, whose animals look alike in both sexes and are not lost.
 */
final class Segregations {

    /** Tables of loci with more genotypes than this would be large; there the weights are worked out mating by mating. */
    private static final int MOST_PAIRS = 64;

    private final Model model;
    private final boolean apply;
    private final Locus[] loci;

    /** For each locus, its position in the model. */
    private final int[] places;

    /** For each locus, what the kits of a sire and a dam express, by the number of the sire's genotype, then of the dam's; empty where it would be large. */
    private final LocusWeights[][] tables;

    private Segregations(Model model, Diagram<?> diagram) {
        this.model = model;
        this.loci = diagram.loci().stream().map(model::locus).toArray(Locus[]::new);
        this.apply = diagram.testsOnlyLoci() && diagram.loci().stream().allMatch(id -> isSimple(model, id));
        this.places = new int[loci.length];
        this.tables = new LocusWeights[loci.length][];
        List<String> ids = new ArrayList<>(model.loci().keySet());
        Map<LocusWeights, LocusWeights> same = new LinkedHashMap<>();
        for (int l = 0; l < loci.length && apply; l++) {
            places[l] = ids.indexOf(loci[l].id());
            int pairs = loci[l].pairs().size();
            LocusWeights[] table = new LocusWeights[pairs <= MOST_PAIRS ? pairs * pairs : 0];
            for (int i = 0; i < table.length; i++) {
                LocusWeights weights = weights(loci[l], i / pairs, i % pairs);
                table[i] = same.computeIfAbsent(weights, key -> key);
            }
            tables[l] = table;
        }
    }

    static Segregations of(CompiledModel compiled, Diagram<?> diagram) {
        return diagram.derived(Segregations.class, asked -> new Segregations(compiled.model(), asked));
    }

    private static boolean isSimple(Model model, String id) {
        Locus locus = model.locus(id);
        return !locus.dependsOnSex()
                && locus.transmission() == Transmission.AUTOSOMAL
                && locus.mutation().isEmpty()
                && model.groupOf(id).isEmpty();
    }

    /** Whether the loci are inherited in so simple a way. */
    boolean apply() {
        return apply;
    }

    /** The chances of what the kits of two parents express at each locus. */
    @SuppressWarnings("ReferenceEquality") // numbers count within one model object; an equal one takes the longer way
    LocusWeights[] mate(Genotype sire, Genotype dam) {
        LocusWeights[] weights = new LocusWeights[loci.length];
        boolean own = sire.model() == model && dam.model() == model;
        for (int l = 0; l < weights.length; l++) {
            int mine = own ? sire.position(places[l]) : position(sire, loci[l]);
            int theirs = own ? dam.position(places[l]) : position(dam, loci[l]);
            if (mine < 0 || theirs < 0) {
                throw uncovered(mine < 0 ? "sire" : "dam", mine < 0 ? sire : dam, loci[l]);
            }
            LocusWeights[] table = tables[l];
            weights[l] = table.length == 0
                    ? weights(loci[l], mine, theirs)
                    : table[mine * loci[l].pairs().size() + theirs];
        }
        return weights;
    }

    private static int position(Genotype parent, Locus locus) {
        return parent.pair(locus.id()).map(locus::position).orElse(Genotype.UNKNOWN);
    }

    static IllegalArgumentException uncovered(String role, Genotype parent, Locus locus) {
        return new IllegalArgumentException(
                "the " + role + "'s genotype \"" + parent + "\" does not say what locus " + locus.id() + " carries");
    }

    private static LocusWeights weights(Locus locus, int sire, int dam) {
        long[] shares = new long[locus.expressions().size()];
        for (int mine : locus.positions(locus.pairs().get(sire))) {
            for (int theirs : locus.positions(locus.pairs().get(dam))) {
                shares[locus.expressionPosition(locus.pair(mine, theirs), Sex.FEMALE)]++;
            }
        }
        return LocusWeights.of(shares);
    }
}
