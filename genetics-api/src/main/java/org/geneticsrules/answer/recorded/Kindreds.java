package org.geneticsrules.answer.recorded;

import java.util.ArrayDeque;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;

/** Parts of pedigrees. */
final class Kindreds {

    private Kindreds() {}

    /** The animals that relations connect with some, these included: nothing that is recorded of any other bears on them. */
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
                part.add(litter);
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

    private static List<String> members(Litter litter) {
        Set<String> all = new LinkedHashSet<>(litter.kits());
        litter.dam().ifPresent(all::add);
        litter.fosterDam().ifPresent(all::add); // inherits nothing, but the litter names her
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
}
