package org.geneticsrules.estimation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Paternity;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sighting;

/**
 * The families of a pedigree by which it can be asked which share of the young of two carriers shows something.
 *
 * <p>A litter counts if both parents are known and so many of them show it as is asked for. That they are carriers is known by whatever brought the
 * litter to notice: at least one that shows it, probands, or an earlier one. Litters that would have been recorded whatever they showed do not say so by
 * themselves. They count in full where the couple has another litter that does, or where it is stated that all couples are carriers; else all such litters of a
 * couple are one family of which at least one shows it, and a couple of whose young none does is left out, since it may be no couple of carriers. A litter of which
 * it is not stated how it came to be recorded is treated like those, and named.
 *
 * @param families the families
 * @param leftOut by the id of a litter that does not count, why
 * @param unstated ids of litters that count and of which it is not stated how they came to be recorded
 * @param unclear young in litters that count of which it is not recorded whether they show it, by their ids or, where they were scored and are not listed, by
 *     their number; they are not counted
 */
public record RecordedFamilies(
        List<RecordedFamily> families, Map<String, String> leftOut, List<String> unstated, List<String> unclear) {

    /**
     * Copies the lists.
     *
     * @param families the families
     * @param leftOut litters that do not count
     * @param unstated litters of which it is not stated why they are recorded
     * @param unclear young that are not counted
     */
    public RecordedFamilies {
        families = ImmutableList.copyOf(families);
        leftOut = Collections.unmodifiableMap(new LinkedHashMap<>(leftOut));
        unstated = ImmutableList.copyOf(unstated);
        unclear = ImmutableList.copyOf(unclear);
    }

    /**
     * Which litters are asked about.
     *
     * @param look what the young may show
     * @param parentsShowing how many of the two parents show it themselves, 0 to 2
     * @param litters ids of the litters that matter; all if there are none
     * @param carriers whether all couples are known to be carriers otherwise, by tests or other young
     */
    public record Which(Phenotype look, int parentsShowing, Set<String> litters, boolean carriers) {
        /**
         * Copies the ids.
         *
         * @param look what the young may show
         * @param parentsShowing how many parents show it
         * @param litters ids of litters
         * @param carriers whether all couples are known to be carriers
         * @throws IllegalArgumentException if the look names nothing, or there are not 0 to 2 parents
         */
        public Which {
            litters = ImmutableSet.copyOf(litters);
            if (look.traits().isEmpty() || parentsShowing < 0 || parentsShowing > 2) {
                throw new IllegalArgumentException("expected a look and 0 to 2 parents that show it, but found \""
                        + look + "\" and " + parentsShowing);
            }
        }
    }

    /** Whether an animal shows a look; nothing where that is not recorded. */
    private static Optional<Boolean> shows(Individual one, Phenotype look) {
        Optional<Boolean> found = Optional.empty();
        for (Observation seen : one.observations()) {
            if (seen.traits().containsAll(look.traits())) {
                if (seen.looks().stream().allMatch(each -> each.shows(look))) {
                    return Optional.of(true);
                }
                if (seen.looks().stream().noneMatch(each -> each.shows(look))) {
                    found = Optional.of(false);
                }
            }
        }
        return found;
    }

    /** A litter that counts. */
    private record Scored(String id, int siblings, int affected, Ascertainment how) {
        boolean isNoticed() {
            return !(how instanceof Ascertainment.Complete || how instanceof Ascertainment.Unknown);
        }

        RecordedFamily family() {
            return new RecordedFamily(id, siblings, affected, isNoticed() ? how : Ascertainment.complete());
        }
    }

    /**
     * Finds the families.
     *
     * @param pedigree the recorded animals
     * @param which which litters are asked about
     * @return the families, and the litters that do not count
     * @throws IllegalArgumentException if there is no such litter
     */
    public static RecordedFamilies of(Pedigree pedigree, Which which) {
        for (String id : which.litters()) {
            if (!pedigree.litters().containsKey(id)) {
                throw new IllegalArgumentException("there is no litter \"" + id + "\" among "
                        + pedigree.litters().keySet());
            }
        }
        Reader reader = new Reader(pedigree, which);
        for (Litter litter : pedigree.litters().values()) {
            if (which.litters().isEmpty() || which.litters().contains(litter.id())) {
                reader.read(litter);
            }
        }
        return reader.found();
    }

    private static final class Reader {

        private final Pedigree pedigree;
        private final Which which;
        private final Map<List<String>, List<Scored>> couples = new LinkedHashMap<>();
        private final Map<String, String> leftOut = new LinkedHashMap<>();
        private final Set<String> unclear = new LinkedHashSet<>();

        Reader(Pedigree pedigree, Which which) {
            this.pedigree = pedigree;
            this.which = which;
        }

        void read(Litter litter) {
            if (litter.dam().isEmpty() || !(litter.sires() instanceof Paternity.Known sire)) {
                leftOut.put(litter.id(), "its parents are not both known");
                return;
            }
            List<String> parents = List.of(litter.dam().get(), sire.sire());
            int showing = 0;
            for (String parent : parents) {
                Optional<Boolean> shows = shows(pedigree.individual(parent), which.look());
                if (shows.isEmpty()) {
                    leftOut.put(litter.id(), "it is not recorded whether " + parent + " shows it");
                    return;
                }
                showing += shows.get() ? 1 : 0;
            }
            if (showing != which.parentsShowing()) {
                leftOut.put(
                        litter.id(),
                        switch (showing) {
                            case 0 -> "neither parent shows it";
                            case 1 -> "a parent shows it";
                            default -> "both parents show it";
                        });
                return;
            }
            Optional<Sighting> sign = litter.ascertainment().noticedBy();
            if (sign.isPresent() && !sign.get().look().equals(which.look())) {
                leftOut.put(
                        litter.id(),
                        "it was noticed for something else: " + sign.get().look());
                return;
            }
            score(litter, parents);
        }

        private void score(Litter litter, List<String> parents) {
            int affected = 0;
            int siblings = 0;
            List<String> unknown = new ArrayList<>();
            for (String kit : litter.kits()) {
                Optional<Boolean> shows = shows(pedigree.individual(kit), which.look());
                siblings += shows.isPresent() ? 1 : 0;
                affected += shows.orElse(false) ? 1 : 0;
                if (shows.isEmpty()) {
                    unknown.add(kit);
                }
            }
            int unlisted = litter.scoredCount().orElse(0) - litter.kits().size();
            if (unlisted > 0) {
                unknown.add(unlisted + " of litter " + litter.id() + " that are not listed");
            }
            if (siblings == 0) {
                leftOut.put(litter.id(), "of none of its young it is recorded whether it shows it");
                return;
            }
            Scored scored = new Scored(litter.id(), siblings, affected, litter.ascertainment());
            try {
                scored.family();
            } catch (IllegalArgumentException unlike) {
                leftOut.put(
                        litter.id(),
                        "its records do not go with how it came to be recorded, " + litter.ascertainment() + ": "
                                + affected + " of its young show it");
                return;
            }
            unclear.addAll(unknown);
            couples.computeIfAbsent(parents, key -> new ArrayList<>()).add(scored);
        }

        RecordedFamilies found() {
            List<RecordedFamily> families = new ArrayList<>();
            List<String> unstated = new ArrayList<>();
            couples.forEach((parents, litters) -> {
                List<Scored> anyway =
                        litters.stream().filter(one -> !one.isNoticed()).toList();
                boolean counted = true;
                if (which.carriers() || anyway.size() < litters.size()) {
                    litters.forEach(one -> families.add(one.family()));
                } else {
                    counted = together(String.join(" x ", parents), anyway, families);
                }
                if (counted) {
                    anyway.stream()
                            .filter(one -> one.how() instanceof Ascertainment.Unknown)
                            .forEach(one -> unstated.add(one.id()));
                }
            });
            return new RecordedFamilies(families, leftOut, unstated, List.copyOf(unclear));
        }

        /** The litters of a couple who are known to be carriers by nothing but these, if by them. */
        private boolean together(String couple, Collection<Scored> litters, List<RecordedFamily> families) {
            int siblings = litters.stream().mapToInt(Scored::siblings).sum();
            int affected = litters.stream().mapToInt(Scored::affected).sum();
            if (affected == 0) {
                litters.forEach(one -> leftOut.put(
                        one.id(), "none of the young of " + couple + " shows it, who may be no couple of carriers"));
                return false;
            }
            String name = String.join(", ", litters.stream().map(Scored::id).toList());
            families.add(new RecordedFamily(name, siblings, affected, Ascertainment.atLeastOne(which.look())));
            return true;
        }
    }
}
