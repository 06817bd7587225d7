package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import com.google.common.collect.Sets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;

/**
 * Which loci, which statements about viability, and whether the sex bear on a question about the kits counted at some point.
 *
 * <p>Losses at loci of another linkage group change no share of what is asked, unless both depend on the sex. So statements enter at
 * loci of the groups of loci that bear on the question and, where it depends on the sex, all that depend on the sex too; and that is
 * repeated with what entered, until nothing does.
 */
final class Relevance {

    private final Model model;
    private final Set<String> loci;
    private final List<Viability> viability = new ArrayList<>();
    private boolean sex;

    private Relevance(Model model, Set<String> loci, boolean sex) {
        this.model = model;
        this.loci = new LinkedHashSet<>(loci);
        this.sex = sex || loci.stream().map(model::locus).anyMatch(Relevance::dependsOnSex);
    }

    static Relevance of(Model model, Reads reads, Census census) {
        return of(model, reads, census, ImmutableSet.of());
    }

    /** What bears on a question and on some loci beside it. */
    static Relevance of(Model model, Reads reads, Census census, Set<String> also) {
        return of(model, Sets.union(reads.loci(), also), reads.sex(), census);
    }

    /** What bears on what is seen of some loci and, if so, of the sex. */
    static Relevance of(Model model, Set<String> loci, boolean sex, Census census) {
        Relevance relevance = new Relevance(model, loci, sex);
        List<Viability> left = new ArrayList<>(model.viability().values());
        left.removeIf(one -> !loses(one, census));
        while (left.removeIf(relevance::enters)) {
            // what entered may let others enter
        }
        relevance.viability.sort((one, other) -> Integer.compare(relevance.rank(one), relevance.rank(other)));
        return relevance;
    }

    /** Those statements about viability too that would bear on it if they said something else. */
    List<Viability> supposable(Census census) {
        return model.viability().values().stream()
                .filter(one -> viability.contains(one) || (counts(one, census) && reaches(one)))
                .toList();
    }

    /** Whether a statement says anything of the time before kits are counted, be it that none are lost. */
    private static boolean counts(Viability one, Census census) {
        return switch (census) {
            case CONCEIVED -> false;
            case BORN -> one.decidesBirth();
            case SCORED -> true;
        };
    }

    /** Loci that bear on the question, in model order. */
    ImmutableSet<String> loci() {
        return model.loci().keySet().stream().filter(loci::contains).collect(ImmutableSet.toImmutableSet());
    }

    /** Statements about viability that do, in declared order. */
    List<Viability> viability() {
        return ImmutableList.copyOf(viability);
    }

    /** Whether the sex does. */
    boolean sex() {
        return sex;
    }

    static boolean dependsOnSex(Locus locus) {
        return locus.dependsOnSex() || locus.transmission().heterogametic().isPresent();
    }

    /** Whether a statement lets kits be lost before they are counted. */
    static boolean loses(Viability one, Census census) {
        return switch (census) {
            case CONCEIVED -> false;
            case BORN -> !one.birth().isOne();
            case SCORED -> !one.birth().isOne() || !one.scored().isOne();
        };
    }

    private boolean enters(Viability one) {
        if (!reaches(one)) {
            return false;
        }
        loci.add(one.locus());
        sex |= bySex(one);
        viability.add(one);
        return true;
    }

    private boolean reaches(Viability one) {
        boolean linked = loci.contains(one.locus())
                || model.groupOf(one.locus()).map(LinkageGroup::loci).orElse(List.of()).stream()
                        .anyMatch(loci::contains);
        return linked || (sex && bySex(one));
    }

    private boolean bySex(Viability one) {
        return one.sex().isPresent() || dependsOnSex(model.locus(one.locus()));
    }

    private int rank(Viability one) {
        return ImmutableList.copyOf(model.viability().keySet()).indexOf(one.id());
    }
}
