package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BiFunction;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Searches for what moves at one moment. Not thread-safe. */
final class Search {

    private final Map<Which, CompiledModel> models;
    private final List<String> traits;
    private final Moment moment;
    private final boolean bySex;
    private final List<ComparedLocus> order;
    private final int[] declared;
    private final List<Change> changes;
    private final Linkage linkage;

    Search(
            CompiledModel before,
            CompiledModel after,
            List<String> traits,
            Moment moment,
            boolean bySex,
            ComparedLoci loci,
            List<Change> changes) {
        this.models = new LinkedHashMap<>();
        models.put(Which.BEFORE, before);
        models.put(Which.AFTER, after);
        this.traits = traits;
        this.moment = moment;
        this.bySex = bySex;
        this.changes = changes;
        this.order = loci.inOrder(before.diagram(view()).loci());
        this.declared = order.stream().mapToInt(loci.list()::indexOf).toArray();
        this.linkage = Linkage.of(order, before, after);
    }

    private View view() {
        return new View(traits, moment.stage(), moment.census());
    }

    /** Of kits the sex is seen too, where it matters. */
    private View kitView() {
        List<String> seen = new ArrayList<>(traits);
        if (bySex) {
            seen.add(0, Sex.VARIABLE);
        }
        return new View(seen, moment.stage(), moment.census());
    }

    private List<Sex> sexes() {
        return bySex ? ImmutableList.copyOf(Sex.values()) : ImmutableList.of(Sex.FEMALE);
    }

    private List<Side> sides(
            View view,
            List<Sex> sexes,
            BiFunction<Which, Sex, BiFunction<CompiledModel, Diagram<Phenotype>, Side>> make) {
        List<String> ids = order.stream().map(ComparedLocus::id).toList();
        List<Side> sides = new ArrayList<>();
        models.forEach((which, compiled) -> {
            Diagram<Phenotype> diagram = compiled.diagramInOrder(view, ids);
            sexes.forEach(sex -> sides.add(make.apply(which, sex).apply(compiled, diagram)));
        });
        return sides;
    }

    // ---- genotypes
    // ------------------------------------------------------------------------------------------------------------

    /** The genotypes that move. */
    Moved<MovedGenotype> genotypes(int most) {
        Map<Sex, Smallest> bySexes = new LinkedHashMap<>();
        Map<Sex, Smallest.Found> next = new LinkedHashMap<>();
        for (Sex sex : sexes()) {
            List<Side> sides = sides(
                    view(),
                    List.of(sex),
                    (which, of) -> (model, diagram) -> new Side.OfAnimal(which, of, diagram, order));
            List<List<Carried.Letter>> letters = order.stream()
                    .map(locus -> held(locus.of(sex), false, false).stream()
                            .map(one -> new Carried.Letter(ImmutableList.of(one)))
                            .toList())
                    .toList();
            Smallest search = new Smallest(new Reading(sides, letters), 1, declared);
            bySexes.put(sex, search);
            search.next(word -> true).ifPresent(found -> next.put(sex, found));
        }
        List<MovedGenotype> found = new ArrayList<>();
        while (!next.isEmpty() && found.size() < most) {
            Sex sex = next.entrySet().stream()
                    .min(Map.Entry.comparingByValue(Comparator.comparing(Smallest.Found::word, Word.SMALLEST_FIRST)))
                    .orElseThrow()
                    .getKey();
            Smallest search = Objects.requireNonNull(bySexes.get(sex));
            Smallest.Found one = Objects.requireNonNull(next.remove(sex));
            found.add(genotype(one, search.read(one.word()), sex));
            search.next(word -> true).ifPresent(other -> next.put(sex, other));
        }
        return found.isEmpty() ? Moved.nothing() : new Moved<>(Optional.of(moment), found, !next.isEmpty());
    }

    private MovedGenotype genotype(Smallest.Found found, List<Carried.Letter> letters, Sex sex) {
        Genotype before = genotype(Which.BEFORE, letters, 0);
        Genotype after = genotype(Which.AFTER, letters, 0);
        Fate one = fate(found, Which.BEFORE);
        Fate other = fate(found, Which.AFTER);
        Drivers drivers = new Drivers(changes);
        drivers.genotype(model(Which.BEFORE), before, sex, view());
        drivers.genotype(model(Which.AFTER), after, sex, view());
        return new MovedGenotype(
                bySex ? Optional.of(sex) : Optional.empty(),
                before,
                after,
                one,
                other,
                Concern.of(one, other, traits),
                drivers.found());
    }

    // ---- matings
    // --------------------------------------------------------------------------------------------------------------

    /** The matings that move. */
    Moved<MovedMating> matings(int most) {
        List<Side> sides = sides(
                kitView(),
                sexes(),
                (which, sex) -> (model, diagram) -> new OfKit(which, model.model(), sex, diagram, order));
        List<List<Carried.Letter>> letters = new ArrayList<>();
        for (int position = 0; position < order.size(); position++) {
            boolean linked = linkage.isLinked(position);
            List<Carried.Letter> here = new ArrayList<>();
            for (Carried.Held sire : held(order.get(position).of(Sex.MALE), linked, true)) {
                for (Carried.Held dam : held(order.get(position).of(Sex.FEMALE), linked, true)) {
                    here.add(new Carried.Letter(ImmutableList.of(sire, dam)));
                }
            }
            letters.add(here);
        }
        if (letters.stream().anyMatch(List::isEmpty)) {
            return Moved.nothing(); // no animal of one sex lives under both models
        }
        Smallest search = new Smallest(new Reading(sides, letters), 2, declared);
        List<MovedMating> found = new ArrayList<>();
        Optional<Smallest.Found> next = search.next(word -> isPlain(search.read(word)));
        while (next.isPresent() && found.size() < most) {
            found.add(mating(next.get(), search.read(next.get().word())));
            next = search.next(word -> isPlain(search.read(word)));
        }
        return found.isEmpty() ? Moved.nothing() : new Moved<>(Optional.of(moment), found, next.isPresent());
    }

    /** Of the ways to write the strands of one animal, the first. */
    private boolean isPlain(List<Carried.Letter> letters) {
        return linkage.isPlain(letters, 0, declared) && linkage.isPlain(letters, 1, declared);
    }

    private MovedMating mating(Smallest.Found found, List<Carried.Letter> letters) {
        Fate one = fate(found, Which.BEFORE);
        Fate other = fate(found, Which.AFTER);
        Genotype sire = genotype(Which.BEFORE, letters, 0);
        Genotype dam = genotype(Which.BEFORE, letters, 1);
        Genotype sireAfter = genotype(Which.AFTER, letters, 0);
        Genotype damAfter = genotype(Which.AFTER, letters, 1);
        Drivers drivers = new Drivers(changes);
        drivers.mating(model(Which.BEFORE), sire, dam, ImmutableList.copyOf(Sex.values()), view());
        drivers.mating(model(Which.AFTER), sireAfter, damAfter, ImmutableList.copyOf(Sex.values()), view());
        return new MovedMating(
                sire,
                dam,
                sireAfter,
                damAfter,
                one,
                other,
                Concern.of(one, other, kitView().traits()),
                drivers.found());
    }

    // ---- both
    // -----------------------------------------------------------------------------------------------------------------

    private CompiledModel model(Which which) {
        return Objects.requireNonNull(models.get(which));
    }

    private static List<Carried.Held> held(List<Carried> choices, boolean linked, boolean living) {
        ImmutableList.Builder<Carried.Held> held = ImmutableList.builder();
        for (int i = 0; i < choices.size(); i++) {
            Carried carried = choices.get(i);
            if (carried.lives() || !living) {
                held.add(new Carried.Held(carried, false, 2 * i));
                if (linked && carried.isHeterozygous()) {
                    held.add(new Carried.Held(carried, true, 2 * i + 1));
                }
            }
        }
        return held.build();
    }

    private Genotype genotype(Which which, List<Carried.Letter> letters, int animal) {
        Model model = model(which).model();
        List<AllelePair> pairs = new ArrayList<>();
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        for (Carried.Letter letter : letters) {
            Carried.Held held = letter.held().get(animal);
            held.carried().in(which).ifPresent(pair -> {
                pairs.add(pair);
                if (letter.held().size() > 1 && pair.isHeterozygous()) {
                    Allele one = pair.alleles().get(held.turned() ? 1 : 0);
                    Allele other = pair.alleles().get(held.turned() ? 0 : 1);
                    strands.put(pair.locus(), new Phase.Strands(one, other));
                }
            });
        }
        return Genotype.of(model, pairs, Phase.of(model, strands));
    }

    private static Fate fate(Smallest.Found found, Which which) {
        Map<Optional<Phenotype>, BigInteger> all = new LinkedHashMap<>();
        Objects.requireNonNull(found.looks().get(which))
                .values()
                .forEach(looks -> looks.forEach((look, weight) -> all.merge(look, weight, BigInteger::add)));
        return Fate.of(all);
    }

    /** Which of the loci read are linked, in either model. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Linkage(boolean[][] together) {
        static Linkage of(List<ComparedLocus> order, CompiledModel... models) {
            boolean[][] together = new boolean[order.size()][order.size()];
            for (CompiledModel compiled : models) {
                compiled.model().groups().values().forEach(group -> {
                    for (int i = 0; i < together.length; i++) {
                        for (int j = 0; j < together.length; j++) {
                            together[i][j] |= i != j
                                    && group.loci().contains(order.get(i).id())
                                    && group.loci().contains(order.get(j).id());
                        }
                    }
                });
            }
            return new Linkage(together);
        }

        boolean isLinked(int position) {
            for (boolean linked : together[position]) {
                if (linked) {
                    return true;
                }
            }
            return false;
        }

        /** Whether of all heterozygous loci linked with one another, the first in declared order is not turned. */
        boolean isPlain(List<Carried.Letter> letters, int animal, int[] declared) {
            int[] component = new int[letters.size()];
            Arrays.setAll(component, i -> i);
            boolean[] mixed = new boolean[letters.size()];
            Arrays.fill(mixed, false);
            for (int i = 0; i < mixed.length; i++) {
                mixed[i] = letters.get(i).held().get(animal).carried().isHeterozygous();
            }
            for (int i = 0; i < mixed.length; i++) {
                for (int j = 0; j < i; j++) {
                    if (mixed[i] && mixed[j] && together[i][j]) {
                        int one = component[i];
                        int other = component[j];
                        Arrays.setAll(component, k -> component[k] == one ? other : component[k]);
                    }
                }
            }
            for (int i = 0; i < mixed.length; i++) {
                boolean first = true;
                for (int j = 0; j < mixed.length; j++) {
                    first &= !(mixed[j] && component[j] == component[i] && declared[j] < declared[i]);
                }
                if (first && letters.get(i).held().get(animal).turned()) {
                    return false;
                }
            }
            return true;
        }
    }
}
