package org.geneticsrules.planning;

import com.google.common.collect.ImmutableList;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.comparison.Candidate;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Cost;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** The records of some relatives under one model: how likely they are, as they are and with something put in. Not thread-safe. */
final class Held {

    private final Candidate candidate;
    private final Inference inference;
    private final Pedigree relatives;
    private double log = Double.NaN;

    Held(Candidate candidate, Inference any, Pedigree relatives) {
        this.candidate = candidate;
        this.inference = any.about(relatives);
        this.relatives = relatives;
    }

    Candidate candidate() {
        return candidate;
    }

    Inference inference() {
        return inference;
    }

    Pedigree relatives() {
        return relatives;
    }

    /** The natural logarithm of the chance of the records. */
    double log() {
        if (Double.isNaN(log)) {
            log = log(relatives);
        }
        return log;
    }

    /** The natural logarithm of the chance of the records with one animal's put otherwise, given the records as they are. */
    double given(Individual other) {
        PedigreeBuilder builder = Pedigree.builder(relatives.id(), relatives.version());
        relatives.individuals().values().forEach(one -> builder.add(one.id().equals(other.id()) ? other : one));
        relatives.litters().values().forEach(builder::add);
        return log(builder.build()) - log();
    }

    /** The natural logarithm of the chance of the records with one litter more. */
    double with(Litter litter, List<Individual> kits) {
        PedigreeBuilder builder = Pedigree.builder(relatives.id(), relatives.version());
        relatives.individuals().values().forEach(builder::add);
        kits.forEach(builder::add);
        relatives.litters().values().forEach(builder::add);
        return log(builder.add(litter).build());
    }

    private double log(Pedigree pedigree) {
        Inference asked = inference.about(pedigree);
        Conclusions found = asked.conclude();
        for (String one : pedigree.individuals().keySet()) {
            for (String locus : asked.loci()) {
                Conclusions.Standing standing = found.standing(one, locus);
                if (standing != Conclusions.Standing.EXACT && standing != Conclusions.Standing.CONTRADICTED) {
                    throw new TooLargeException(
                            "cells of a table for the chance of the records of "
                                    + pedigree.individuals().size() + " related animals",
                            asked.costs(asked.loci()).stream()
                                    .mapToDouble(Cost::cells)
                                    .max()
                                    .orElse(0),
                            Inference.USUAL_CELLS,
                            "ask about fewer traits, or fewer of these relatives");
                }
            }
        }
        return found.logLikelihood();
    }

    /**
     * The records of some animals and of all who are tied to them by litters. Parents who were chosen for an earlier kit get that kit, since
     * it says what they carry; other ways in which litters came to be recorded say nothing beyond what the kits show.
     *
     * @param males ids of animals that have to be males
     * @param females ids of animals that have to be females
     */
    static Pedigree relatives(Pedigree pedigree, Collection<String> males, Collection<String> females, String animal) {
        Set<String> ids = new LinkedHashSet<>();
        Set<String> litters = new LinkedHashSet<>();
        Deque<String> waiting = new ArrayDeque<>(males);
        waiting.addAll(females);
        if (!animal.isEmpty()) {
            waiting.add(animal);
        }
        while (!waiting.isEmpty()) {
            String id = waiting.remove();
            if (ids.add(id)) {
                List<Litter> of = new ArrayList<>(pedigree.littersOf(id));
                pedigree.litterOf(id).ifPresent(of::add);
                for (Litter litter : of) {
                    if (litters.add(litter.id())) {
                        litter.dam().ifPresent(waiting::add);
                        waiting.addAll(litter.sires().males());
                        waiting.addAll(litter.kits());
                    }
                }
            }
        }
        PedigreeBuilder builder = Pedigree.builder(pedigree.id(), pedigree.version());
        for (Individual one : pedigree.individuals().values()) {
            if (ids.contains(one.id())) {
                builder.add(
                        males.contains(one.id())
                                ? one.with(Sex.MALE)
                                : females.contains(one.id()) ? one.with(Sex.FEMALE) : one);
            }
        }
        String free = free(pedigree, "earlier");
        int earlier = 0;
        for (Litter litter : pedigree.litters().values()) {
            if (litters.contains(litter.id())) {
                if (litter.ascertainment() instanceof Ascertainment.ParentsChosen chosen) {
                    String kit = free + " " + ++earlier;
                    builder.add(Individual.of(kit).with(seen(chosen.sign())));
                    builder.add(withKit(litter, kit));
                } else {
                    builder.add(withKit(litter, ""));
                }
            }
        }
        return builder.build();
    }

    private static Observation seen(Sighting sign) {
        return new Observation(
                Optional.empty(), sign.stage(), Set.of(sign.look()), sign.light(), Optional.empty(), Optional.empty());
    }

    private static Litter withKit(Litter litter, String more) {
        ImmutableList.Builder<String> kits = ImmutableList.<String>builder().addAll(litter.kits());
        if (!more.isEmpty()) {
            kits.add(more);
        }
        return Litter.of(litter.id(), litter.dam(), litter.sires(), kits.build().toArray(String[]::new));
    }

    /** A beginning of ids that no animal and no litter has. */
    static String free(Pedigree pedigree, String wished) {
        String free = wished;
        while (begins(pedigree.individuals().keySet(), free)
                || begins(pedigree.litters().keySet(), free)) {
            free += "'";
        }
        return free;
    }

    private static boolean begins(Set<String> ids, String with) {
        return ids.stream().anyMatch(id -> id.startsWith(with));
    }
}
