package org.geneticsrules.answer.recorded;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;

/** Parts of pedigrees. */
final class Kindreds {

    /** A portion is filled with kindreds up to this many animals, unless one has more. */
    private static final int PORTION = 5_000;

    private Kindreds() {}

    /**
     * The animals that relations connect with some, these included: nothing that is recorded of any other bears on them. A litter inherits
     * nothing from its foster dam, so that she is left out with all of hers unless relations lead to her.
     */
    static Pedigree of(Pedigree whole, Collection<String> ids) {
        Set<String> reached = new LinkedHashSet<>();
        Deque<String> next = new ArrayDeque<>();
        for (String id : ids) {
            reach(whole.individual(id).id(), reached, next);
        }
        while (!next.isEmpty()) {
            String id = next.remove();
            whole.litterOf(id).ifPresent(litter -> reach(litter, reached, next));
            whole.littersOf(id).forEach(litter -> reach(litter, reached, next));
        }
        if (reached.size() == whole.individuals().size()) {
            return whole;
        }
        PedigreeBuilder part = copy(whole);
        for (Individual one : whole.individuals().values()) {
            if (reached.contains(one.id())) {
                part.add(one);
            }
        }
        for (Litter litter : whole.litters().values()) {
            if (members(litter).stream().anyMatch(reached::contains)) {
                part.add(
                        litter.fosterDam().filter(dam -> !reached.contains(dam)).isPresent() ? born(litter) : litter);
            }
        }
        return part.build();
    }

    private static void reach(Litter litter, Set<String> reached, Deque<String> next) {
        members(litter).forEach(id -> reach(id, reached, next));
    }

    private static void reach(String id, Set<String> reached, Deque<String> next) {
        if (reached.add(id)) {
            next.add(id);
        }
    }

    /** A litter without its foster dam. */
    private static Litter born(Litter litter) {
        return new Litter(
                litter.id(),
                litter.dam(),
                litter.sires(),
                litter.born(),
                litter.bornCount(),
                litter.scoredCount(),
                Optional.empty(),
                litter.kits(),
                litter.ascertainment());
    }

    /** Who inherits and who bequeaths. */
    private static List<String> members(Litter litter) {
        Set<String> all = new LinkedHashSet<>(litter.kits());
        litter.dam().ifPresent(all::add);
        all.addAll(litter.sires().males());
        return List.copyOf(all);
    }

    /** A builder with the name of a pedigree and nothing in it. */
    static PedigreeBuilder copy(Pedigree whole) {
        PedigreeBuilder builder = Pedigree.builder(whole.id(), whole.version());
        whole.catalogue().ifPresent(builder::catalogue);
        return builder;
    }

    /** A builder with all that a pedigree records, in which single records can be put in the place of others. */
    static PedigreeBuilder with(
            Pedigree whole, Collection<Individual> replaced, Collection<Litter> litters, Set<String> without) {
        PedigreeBuilder builder = copy(whole);
        Set<String> done = new LinkedHashSet<>();
        for (Individual one : replaced) {
            builder.add(one);
            done.add(one.id());
        }
        for (Individual one : whole.individuals().values()) {
            if (!done.contains(one.id())) {
                builder.add(one);
            }
        }
        Set<String> told = new LinkedHashSet<>(without);
        for (Litter litter : litters) {
            builder.add(litter);
            told.add(litter.id());
        }
        for (Litter litter : whole.litters().values()) {
            if (!told.contains(litter.id())) {
                builder.add(litter);
            }
        }
        return builder;
    }

    /** An id that no animal and no litter has. */
    static String fresh(Pedigree pedigree, String name) {
        String id = name;
        int number = 1;
        while (pedigree.individuals().containsKey(id) || pedigree.litters().containsKey(id)) {
            number++;
            id = name + " " + number;
        }
        return id;
    }

    /** The loci that any record of a pedigree reads. */
    static Set<String> read(CompiledModel compiled, Pedigree records) {
        Set<String> traits = new LinkedHashSet<>();
        Set<String> loci = new LinkedHashSet<>();
        for (Individual one : records.individuals().values()) {
            one.observations().forEach(seen -> traits.addAll(seen.traits()));
            one.tests().forEach(test -> loci.add(test.locus()));
        }
        traits.retainAll(compiled.model().rules().keySet());
        loci.addAll(compiled.lociRead(traits));
        return loci;
    }

    /** A pedigree in portions of whole kindreds, so that each can be looked at by itself. */
    static List<Pedigree> portions(Pedigree whole) {
        Map<String, Integer> kindredOf = new HashMap<>();
        List<Integer> sizes = new ArrayList<>();
        for (String id : whole.individuals().keySet()) {
            if (!kindredOf.containsKey(id)) {
                sizes.add(number(whole, id, sizes.size(), kindredOf));
            }
        }
        int[] portionOf = new int[sizes.size()];
        int filled = 0;
        int count = 1;
        for (int kindred = 0; kindred < portionOf.length; kindred++) {
            if (filled > 0 && filled + sizes.get(kindred) > PORTION) {
                count++;
                filled = 0;
            }
            portionOf[kindred] = count - 1;
            filled += sizes.get(kindred);
        }
        if (count == 1) {
            return List.of(whole);
        }
        List<PedigreeBuilder> portions = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            portions.add(copy(whole));
        }
        for (Individual one : whole.individuals().values()) {
            portions.get(portionOf[kindredOf.getOrDefault(one.id(), 0)]).add(one);
        }
        for (Litter litter : whole.litters().values()) {
            List<String> members = members(litter);
            int kindred = members.isEmpty() ? 0 : kindredOf.getOrDefault(members.get(0), 0);
            int portion = portionOf[kindred];
            boolean elsewhere = litter.fosterDam()
                    .filter(dam -> portionOf[kindredOf.getOrDefault(dam, 0)] != portion)
                    .isPresent();
            portions.get(portion).add(elsewhere ? born(litter) : litter);
        }
        return portions.stream().map(PedigreeBuilder::build).toList();
    }

    /** Numbers a kindred, and counts it. */
    private static int number(Pedigree whole, String first, int number, Map<String, Integer> kindredOf) {
        Deque<String> next = new ArrayDeque<>(List.of(first));
        Set<String> seen = new LinkedHashSet<>();
        kindredOf.put(first, number);
        int size = 0;
        while (!next.isEmpty()) {
            String id = next.remove();
            size++;
            List<Litter> around = new ArrayList<>(whole.littersOf(id));
            whole.litterOf(id).ifPresent(around::add);
            for (Litter litter : around) {
                for (String member : seen.add(litter.id()) ? members(litter) : List.<String>of()) {
                    if (kindredOf.putIfAbsent(member, number) == null) {
                        next.add(member);
                    }
                }
            }
        }
        return size;
    }

    /** One founder for each population that is stated, or of none: by these it is seen which frequencies are missing. */
    static Pedigree founders(Pedigree whole) {
        Map<Optional<String>, Individual> kinds = new LinkedHashMap<>();
        for (Individual one : whole.individuals().values()) {
            boolean founder = whole.litterOf(one.id()).isEmpty();
            boolean parents = !founder && whole.parentsOf(one.id()).size() > 1;
            if (founder || !parents) {
                kinds.putIfAbsent(
                        one.population(),
                        new Individual(
                                one.id(),
                                one.sex(),
                                Optional.empty(),
                                one.population(),
                                List.of(),
                                List.of(),
                                List.of(),
                                List.of(),
                                one.fertility()));
            }
        }
        PedigreeBuilder builder = copy(whole);
        kinds.values().forEach(builder::add);
        return builder.build();
    }
}
