package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.expression.Chain;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.KitLaw;
import org.geneticsrules.expression.Level;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/**
 * The short way from two known genotypes to the law of their kits, where there is but one: the general way, through boxes of what the
 * parents may be, comes to the same.
 */
final class KnownParents {

    private final Model model;
    private final List<Unit> units;
    private final boolean bothSexes;
    private final boolean loses;

    private KnownParents(Model model, Diagram<?> diagram) {
        this.model = model;
        this.units = Unit.of(model, diagram.loci());
        this.loses = diagram.loses();
        this.bothSexes = bothSexes(model, diagram);
    }

    /** Whether daughters and sons may differ in what matters. */
    private static boolean bothSexes(Model model, Diagram<?> diagram) {
        return diagram.levels().stream().anyMatch(level -> level instanceof Level.OfSex)
                || diagram.loci().stream()
                        .map(model::locus)
                        .anyMatch(locus -> locus.dependsOnSex()
                                || locus.transmission().heterogametic().isPresent());
    }

    static KnownParents of(CompiledModel compiled, Diagram<?> diagram) {
        return diagram.derived(KnownParents.class, asked -> new KnownParents(compiled.model(), asked));
    }

    /** The kits; empty where parents could not have lived, a genotype is incomplete, or an open phase decides who is lost. */
    Optional<Young> young(Genotype sire, Genotype dam) {
        if (!canLive(sire, Sex.MALE) || !canLive(dam, Sex.FEMALE)) {
            return Optional.empty();
        }
        List<Chain> daughters = new ArrayList<>();
        List<Chain> sons = new ArrayList<>();
        for (Unit unit : units) {
            Optional<Gametes> sperm = gametes(unit, sire, Sex.MALE);
            Optional<Gametes> eggs = gametes(unit, dam, Sex.FEMALE);
            if (sperm.isEmpty() || eggs.isEmpty()) {
                return Optional.empty();
            }
            daughters.add(new Fertilisation(unit, Sex.FEMALE, sperm.get(), eggs.get()).expressions());
            if (bothSexes) {
                sons.add(new Fertilisation(unit, Sex.MALE, sperm.get(), eggs.get()).expressions());
            }
        }
        return Optional.of(new Young(
                KitLaw.of(Sex.FEMALE, daughters),
                bothSexes ? Optional.of(KitLaw.of(Sex.MALE, sons)) : Optional.empty()));
    }

    private boolean canLive(Genotype parent, Sex sex) {
        for (Map.Entry<String, AllelePair> at : parent.pairs().entrySet()) {
            if (!ParentBoxes.mayHave(model, model.locus(at.getKey()), at.getValue(), sex)) {
                return false;
            }
        }
        return true;
    }

    private Optional<Gametes> gametes(Unit unit, Genotype parent, Sex sex) {
        int count = unit.loci().size();
        BigInteger[][] pairs = new BigInteger[count][];
        int[] @Nullable [] strands = new int[count][];
        int open = 0;
        for (int l = 0; l < count; l++) {
            Locus locus = unit.loci().get(l);
            Optional<AllelePair> pair = parent.pair(locus.id());
            if (pair.isEmpty()) {
                return Optional.empty();
            }
            pairs[l] = new BigInteger[locus.pairs().size()];
            Arrays.fill(pairs[l], BigInteger.ZERO);
            pairs[l][locus.position(pair.get())] = BigInteger.ONE;
            int[] lying = strands(locus, parent.phase());
            strands[l] = lying.length == 0 ? null : lying;
            open += lying.length == 0 && pair.get().isHeterozygous() ? 1 : 0;
        }
        if (loses && unit.isLinked() && open > 0) {
            return Optional.empty();
        }
        return Optional.of(Gametes.of(unit, new AtUnit(sex, pairs, strands), true));
    }

    /** Positions of the alleles on the two strands; none where it is not known which lies on which. */
    static int[] strands(Locus locus, Phase phase) {
        return phase.at(locus.id())
                .map(both -> {
                    ImmutableList<String> ids =
                            ImmutableList.copyOf(locus.alleles().keySet());
                    return new int[] {
                        ids.indexOf(both.one().id()), ids.indexOf(both.other().id())
                    };
                })
                .orElse(new int[0]);
    }
}
