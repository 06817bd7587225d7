package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;

/** The loci that matter to what is compared, in declared order: those of the first model, then those that only the second has. */
final class ComparedLoci {

    private final Model before;
    private final Model after;
    private final Map<String, ComparedLocus> byId = new LinkedHashMap<>();
    private final List<String> limits = new ArrayList<>();
    private final Problems problems = new Problems(Stage.MEANING);

    /**
     * Finds what animals of both models may carry.
     *
     * @param before the first model
     * @param after the second model
     * @param read the loci that matter in one model or the other
     * @param stated baseline alleles by locus
     */
    ComparedLoci(Model before, Model after, Collection<String> read, Map<String, String> stated) {
        this.before = before;
        this.after = after;
        Set<String> declared = new LinkedHashSet<>(before.loci().keySet());
        declared.addAll(after.loci().keySet());
        for (String locus : stated.keySet()) {
            if (!declared.contains(locus)) {
                problems.unknown("unknown-locus", Pointer.of("baseline", locus), "locus", locus, declared);
            }
        }
        for (String id : declared) {
            if (read.contains(id)) {
                Optional.ofNullable(reference(id, Optional.ofNullable(stated.get(id))))
                        .ifPresent(allele -> byId.put(id, ComparedLocus.of(id, before, after, allele)));
            }
        }
        problems.throwIfAny();
    }

    /** The loci in declared order. */
    List<ComparedLocus> list() {
        return ImmutableList.copyOf(byId.values());
    }

    ComparedLocus locus(String id) {
        return Objects.requireNonNull(byId.get(id), id);
    }

    /** What is left out, in sentences. */
    List<String> limits() {
        return limits;
    }

    /** The reference allele; null, with a problem noted, if there is none or the locus cannot be compared. */
    private @Nullable String reference(String id, Optional<String> stated) {
        Optional<Locus> one = Optional.ofNullable(before.loci().get(id));
        Optional<Locus> other = Optional.ofNullable(after.loci().get(id));
        List<String> alleles = one.isPresent() && other.isPresent()
                ? both(id, one.get(), other.get())
                : ImmutableList.copyOf(
                        one.or(() -> other).orElseThrow().alleles().keySet());
        if (alleles.isEmpty()) {
            return null;
        }
        if (stated.isPresent()) {
            if (!alleles.contains(stated.get())) {
                problems.unknown(
                        "unknown-allele",
                        Pointer.of("baseline", id),
                        "allele of locus " + id + " to compare at",
                        stated.get(),
                        alleles);
                return null;
            }
            return onlyOne(id, one, other, stated.get());
        }
        Optional<String> wild =
                one.or(() -> other).orElseThrow().wildType().map(Allele::id).filter(alleles::contains);
        if (wild.isEmpty() && (one.isEmpty() || other.isEmpty())) {
            problems.add(
                    "missing-baseline",
                    Pointer.of("baseline", id),
                    "only model " + (one.isPresent() ? before : after) + " has locus " + id
                            + ", and no allele is named that animals of the other are taken to carry",
                    "one of " + alleles);
            return null;
        }
        return onlyOne(id, one, other, wild.orElse(alleles.get(0)));
    }

    private String onlyOne(String id, Optional<Locus> one, Optional<Locus> other, String allele) {
        if (one.isEmpty() || other.isEmpty()) {
            limits.add("Only " + (one.isPresent() ? before : after) + " has locus " + id
                    + "; animals are compared that carry no allele there but " + allele + ".");
        }
        return allele;
    }

    private List<String> both(String id, Locus one, Locus other) {
        List<String> shared = ComparedLocus.shared(one, other);
        if (shared.isEmpty()) {
            problems.add(
                    "no-common-allele",
                    Pointer.of("loci", id),
                    "the models have no allele of locus " + id + " in common: "
                            + one.alleles().keySet() + " and " + other.alleles().keySet(),
                    "models that share at least one allele id of the locus");
        }
        for (Sex sex : Sex.values()) {
            if (ComparedLocus.disagree(one, other, sex)) {
                problems.add(
                        "other-strands",
                        Pointer.of("loci", id),
                        sex.word() + "s have locus " + id + " in one model and lack it in the other: it is "
                                + one.transmission().word() + " and "
                                + other.transmission().word(),
                        "models that agree on which sexes have the locus");
                return ImmutableList.of();
            } else if (one.transmission().strands(sex) != other.transmission().strands(sex)) {
                limits.add(
                        "At locus " + id + " " + sex.word()
                                + "s have two strands in one model and one in the other; those that carry one allele alone are compared.");
            }
        }
        for (Model model : List.of(before, after)) {
            Locus mine = model.locus(id);
            List<String> alone = mine.alleles().keySet().stream()
                    .filter(allele -> !shared.contains(allele))
                    .toList();
            if (!alone.isEmpty()) {
                limits.add("Only " + model + " knows at locus " + id + " "
                        + (alone.size() == 1 ? "the allele " : "the alleles ") + String.join(", ", alone)
                        + "; animals that carry it are not compared.");
            }
        }
        return shared;
    }

    /**
     * Puts the loci in an order in which both models can be read well: as the first likes to test them, but so that what is linked in
     * either stands together, in map order as far as the maps agree.
     */
    List<ComparedLocus> inOrder(List<String> liked) {
        List<String> left = new ArrayList<>(liked);
        left.removeIf(locus -> !byId.containsKey(locus));
        byId.keySet().stream().filter(locus -> !left.contains(locus)).forEach(left::add);
        ImmutableList.Builder<ComparedLocus> order = ImmutableList.builder();
        while (!left.isEmpty()) {
            List<String> block = new ArrayList<>(linkedTo(left.get(0)));
            block.retainAll(left);
            left.removeAll(block);
            block.forEach(locus -> order.add(locus(locus)));
        }
        return order.build();
    }

    /** All that is linked to a locus through groups of either model, the larger group's map first. */
    private Set<String> linkedTo(String locus) {
        Set<String> block = new LinkedHashSet<>();
        block.add(locus);
        List<List<String>> maps = new ArrayList<>();
        int size;
        do {
            size = block.size();
            for (Model model : List.of(before, after)) {
                for (LinkageGroup group : model.groups().values()) {
                    List<String> read =
                            group.loci().stream().filter(byId::containsKey).toList();
                    if (read.stream().anyMatch(block::contains) && !maps.contains(read)) {
                        maps.add(read);
                        block.addAll(read);
                    }
                }
            }
        } while (block.size() > size);
        maps.sort((one, other) -> Integer.compare(other.size(), one.size()));
        Set<String> ordered = new LinkedHashSet<>();
        maps.forEach(ordered::addAll);
        ordered.addAll(block);
        return ordered;
    }
}
