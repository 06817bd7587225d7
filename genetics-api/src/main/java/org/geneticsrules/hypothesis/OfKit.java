package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * The look of a kit of two parents whose strands are known.
 *
 * <p>At each locus a strand of each parent is read: either one equally often, except that at linked loci the strand read at the last
 * one is read again unless the loci recombine. The allele may mutate on its way.
 */
final class OfKit extends Side {

    private static final Probability HALF = Probability.of(1, 2);
    private static final List<Sex> PARENTS = List.of(Sex.MALE, Sex.FEMALE);

    /** A linkage group of which several loci are read, as seen from one parent. */
    private record Run(List<String> loci, Strands strands) {}

    private final List<ComparedLocus> order;
    private final List<Run> runs = new ArrayList<>();

    /** For each parent, the run that a locus belongs to. */
    private final List<Map<String, Integer>> runOf = List.of(new LinkedHashMap<>(), new LinkedHashMap<>());

    OfKit(Which which, Model model, Sex kit, Diagram<Phenotype> diagram, List<ComparedLocus> order) {
        super(which, kit, diagram);
        this.order = order;
        for (LinkageGroup group : model.groups().values()) {
            List<String> read = linked(group, loci(), order);
            for (int parent = 0; parent < 2; parent++) {
                Sex sex = PARENTS.get(parent);
                Transmission way = group.transmission();
                if (read.size() > 1 && way.strands(sex) == 2 && way.passes(sex, kit)) {
                    for (String locus : read) {
                        runOf.get(parent).put(locus, runs.size());
                    }
                    runs.add(new Run(read, Strands.of(group, read, sex)));
                }
            }
        }
    }

    /** The loci of a group that are read, in the order of reading. */
    static List<String> linked(LinkageGroup group, List<String> tested, List<ComparedLocus> order) {
        return order.stream()
                .map(ComparedLocus::id)
                .filter(locus -> group.loci().contains(locus) && tested.contains(locus))
                .toList();
    }

    @Override
    Map<State, Probability> start() {
        return start(closed(runs.size()));
    }

    @Override
    Map<State, Probability> read(int position, State state, Carried.Letter letter) {
        Optional<Locus> locus = order.get(position).in(model());
        if (locus.isEmpty() || !loci().contains(locus.get().id())) {
            return Map.of(state, Probability.ONE);
        }
        Map<State, Probability> next = new LinkedHashMap<>();
        fromParent(
                0,
                locus.get(),
                letter,
                state.hidden(),
                (fromSire, afterSire, p) -> fromParent(
                        1,
                        locus.get(),
                        letter,
                        afterSire,
                        (fromDam, hidden, q) -> follow(
                                state,
                                locus.get(),
                                kit(locus.get(), fromSire, fromDam),
                                p.times(q),
                                hidden,
                                (reached, chance) -> next.merge(reached, chance, Probability::plus))));
        return next;
    }

    private static AllelePair kit(Locus locus, int fromSire, int fromDam) {
        if (fromSire < 0 || fromDam < 0) {
            return fromSire < 0 && fromDam < 0 ? locus.of() : locus.of(Math.max(fromSire, fromDam));
        }
        return locus.pair(fromSire, fromDam);
    }

    /** Receives what a parent passes on: the position of the allele, or -1 for none. */
    private interface Passed {
        void on(int allele, ImmutableList<Integer> hidden, Probability chance);
    }

    private void fromParent(
            int parent, Locus locus, Carried.Letter letter, ImmutableList<Integer> hidden, Passed passed) {
        Sex of = PARENTS.get(parent);
        if (!locus.transmission().passes(of, sex())) {
            passed.on(-1, hidden, Probability.ONE);
            return;
        }
        Carried.Held held = letter.held().get(parent);
        int[] alleles = locus.positions(held.carried().in(model()).orElseThrow());
        Integer run = runOf.get(parent).get(locus.id());
        if (run != null) {
            along(runs.get(run), run, locus, held, alleles, hidden, passed);
        } else {
            for (int allele : alleles) {
                mutating(locus, allele, hidden, alleles.length == 2 ? HALF : Probability.ONE, passed);
            }
        }
    }

    private static void along(
            Run run,
            int number,
            Locus locus,
            Carried.Held held,
            int[] alleles,
            ImmutableList<Integer> hidden,
            Passed passed) {
        int position = run.loci().indexOf(locus.id());
        boolean last = position == run.loci().size() - 1;
        for (int state = 0; state < run.strands().states(); state++) {
            Probability chance = position == 0
                    ? run.strands().start(state)
                    : run.strands().step(position, hidden.get(number), state);
            if (!chance.isZero()) {
                int strand = run.strands().strand(state, position) ^ (held.turned() ? 1 : 0);
                mutating(locus, alleles[strand], with(hidden, number, last ? -1 : state), chance, passed);
            }
        }
    }

    private static ImmutableList<Integer> with(ImmutableList<Integer> hidden, int number, int state) {
        List<Integer> changed = new ArrayList<>(hidden);
        changed.set(number, state);
        return ImmutableList.copyOf(changed);
    }

    private static void mutating(
            Locus locus, int allele, ImmutableList<Integer> hidden, Probability chance, Passed passed) {
        List<String> all = ImmutableList.copyOf(locus.alleles().keySet());
        Map<String, Probability> rates = locus.mutation().get(all.get(allele));
        Probability stays = Probability.ONE;
        if (rates != null) {
            for (Map.Entry<String, Probability> rate : rates.entrySet()) {
                stays = stays.minus(rate.getValue());
                passed.on(all.indexOf(rate.getKey()), hidden, chance.times(rate.getValue()));
            }
        }
        if (!stays.isZero()) {
            passed.on(allele, hidden, chance.times(stays));
        }
    }
}
