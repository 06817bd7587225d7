package org.geneticsrules.answer.recorded;

import java.util.Collection;
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

/** Pedigrees made from another: with other records in the place of some, or with nothing but what is asked of them. */
final class Altered {

    private Altered() {}

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
