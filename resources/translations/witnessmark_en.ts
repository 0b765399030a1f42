<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_US">
<context>
    <name>Sheet</name>
    <message numerus="yes">
        <source>%n day(s)</source>
        <translation>
            <numerusform>%n day</numerusform>
            <numerusform>%n days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 %2 to %3, %n pair(s) of hands</source>
        <translation>
            <numerusform>%1 %2 to %3, %n pair of hands</numerusform>
            <numerusform>%1 %2 to %3, %n pairs of hands</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n piece(s)</source>
        <translation>
            <numerusform>%n piece</numerusform>
            <numerusform>%n pieces</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>after %n day(s)</source>
        <translation>
            <numerusform>after %n day</numerusform>
            <numerusform>after %n days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>service manual: %n joint(s) has/have no torque here yet</source>
        <translation>
            <numerusform>service manual: %n joint has no torque here yet</numerusform>
            <numerusform>service manual: %n joints have no torque here yet</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Undo</name>
    <message numerus="yes">
        <source>chose %n job(s) for the weekend</source>
        <translation>
            <numerusform>chose %n job for the weekend</numerusform>
            <numerusform>chose %n jobs for the weekend</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>took over %n line(s) of %1</source>
        <translation>
            <numerusform>took over %n line of %1</numerusform>
            <numerusform>took over %n lines of %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>noted what is known of %n task(s) on %1</source>
        <translation>
            <numerusform>noted what is known of %n task on %1</numerusform>
            <numerusform>noted what is known of %n tasks on %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%1 with %n joint(s) of its model</source>
        <translation>
            <numerusform>%1 with %n joint of its model</numerusform>
            <numerusform>%1 with %n joints of its model</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>entered %n joint(s) on %1</source>
        <translation>
            <numerusform>entered %n joint on %1</numerusform>
            <numerusform>entered %n joints on %1</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>fitted %n item(s)</source>
        <translation>
            <numerusform>fitted %n item</numerusform>
            <numerusform>fitted %n items</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n joint(s)</source>
        <translation>
            <numerusform>%n joint</numerusform>
            <numerusform>%n joints</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui</name>
    <message numerus="yes">
        <source>%n piece(s)</source>
        <translation>
            <numerusform>%n piece</numerusform>
            <numerusform>%n pieces</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n time(s)</source>
        <translation>
            <numerusform>%n time</numerusform>
            <numerusform>%n times</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>after %n more time(s)</source>
        <translation>
            <numerusform>after %n more time</numerusform>
            <numerusform>after %n more times</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>never checked, %n cycle(s) on record</source>
        <translation>
            <numerusform>never checked, %n cycle on record</numerusform>
            <numerusform>never checked, %n cycles on record</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n check(s)</source>
        <translation>
            <numerusform>%n check</numerusform>
            <numerusform>%n checks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n outing(s)</source>
        <translation>
            <numerusform>%n outing</numerusform>
            <numerusform>%n outings</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n start(s)</source>
        <translation>
            <numerusform>%n start</numerusform>
            <numerusform>%n starts</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n wash(es)</source>
        <translation>
            <numerusform>%n wash</numerusform>
            <numerusform>%n washes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n mud day(s)</source>
        <translation>
            <numerusform>%n mud day</numerusform>
            <numerusform>%n mud days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n crash(es)</source>
        <translation>
            <numerusform>%n crash</numerusform>
            <numerusform>%n crashes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n month(s)</source>
        <translation>
            <numerusform>%n month</numerusform>
            <numerusform>%n months</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s)</source>
        <translation>
            <numerusform>%n day</numerusform>
            <numerusform>%n days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>in %n day(s)</source>
        <translation>
            <numerusform>in %n day</numerusform>
            <numerusform>in %n days</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n day(s) ago</source>
        <translation>
            <numerusform>%n day ago</numerusform>
            <numerusform>%n days ago</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n reading(s)</source>
        <translation>
            <numerusform>%n reading</numerusform>
            <numerusform>%n readings</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n job(s)</source>
        <translation>
            <numerusform>%n job</numerusform>
            <numerusform>%n jobs</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n unlogged stretch(es)</source>
        <translation>
            <numerusform>%n unlogged stretch</numerusform>
            <numerusform>%n unlogged stretches</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n part(s) of one stretch</source>
        <translation>
            <numerusform>%n part of one stretch</numerusform>
            <numerusform>%n parts of one stretch</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n joint(s) of this machine have no figure yet and are not on the card.</source>
        <translation>
            <numerusform>%n joint of this machine has no figure yet and is not on the card.</numerusform>
            <numerusform>%n joints of this machine have no figure yet and are not on the card.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::BaselineView</name>
    <message numerus="yes">
        <source>%n task(s)</source>
        <translation>
            <numerusform>%n task</numerusform>
            <numerusform>%n tasks</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::BenchModel</name>
    <message numerus="yes">
        <source>%n check(s)</source>
        <translation>
            <numerusform>%n check</numerusform>
            <numerusform>%n checks</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n line(s) of the shelf</source>
        <translation>
            <numerusform>%n line of the shelf</numerusform>
            <numerusform>%n lines of the shelf</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::ChartView</name>
    <message numerus="yes">
        <source>and %n more cell(s) that can&apos;t be read</source>
        <translation>
            <numerusform>and %n more cell that can&apos;t be read</numerusform>
            <numerusform>and %n more cells that can&apos;t be read</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n of the rows say(s) what is there already.</source>
        <translation>
            <numerusform>%n of the rows says what is there already.</numerusform>
            <numerusform>%n of the rows say what is there already.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Enter %n joint(s)</source>
        <translation>
            <numerusform>Enter %n joint</numerusform>
            <numerusform>Enter %n joints</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n row(s) shared with %1</source>
        <translation>
            <numerusform>One row is shared with %1</numerusform>
            <numerusform>%n rows are shared with %1</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::ConfirmView</name>
    <message numerus="yes">
        <source>%n figure(s) typed from the manual and not entered</source>
        <translation>
            <numerusform>%n figure typed from the manual and not entered</numerusform>
            <numerusform>%n figures typed from the manual and not entered</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::FirstHoursView</name>
    <message numerus="yes">
        <source> · %n job(s)</source>
        <translation>
            <numerusform> · %n job</numerusform>
            <numerusform> · %n jobs</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::HeadsStrip</name>
    <message numerus="yes">
        <source>%n day(s)</source>
        <translation>
            <numerusform>%n day</numerusform>
            <numerusform>%n days</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::NotebookDialog</name>
    <message numerus="yes">
        <source>%1 is/are new: choose the schedule(s) above, so that the jobs count.</source>
        <translation>
            <numerusform>%1 is new: choose its schedule above, so that its jobs count.</numerusform>
            <numerusform>%1 are new: choose their schedules above, so that their jobs count.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Take %n line(s)</source>
        <translation>
            <numerusform>Take %n line</numerusform>
            <numerusform>Take %n lines</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>; %n doubtful stay(s) out</source>
        <translation>
            <numerusform>; %n doubtful stays out</numerusform>
            <numerusform>; %n doubtful stay out</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n doubtful line(s) wait for your word; left open, it/they stay(s) out.</source>
        <translation>
            <numerusform>%n doubtful line waits for your word; left open, it stays out.</numerusform>
            <numerusform>%n doubtful lines wait for your word; left open, they stay out.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Enter once more goes on without it/them.</source>
        <translation>
            <numerusform>Enter once more goes on without it.</numerusform>
            <numerusform>Enter once more goes on without them.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n doubtful line(s) have no answer yet.</source>
        <translation>
            <numerusform>%n doubtful line has no answer yet.</numerusform>
            <numerusform>%n doubtful lines have no answer yet.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n answer(s) not written; Escape once more leaves without it/them.</source>
        <translation>
            <numerusform>%n answer is not written; Escape once more leaves without it.</numerusform>
            <numerusform>%n answers are not written; Escape once more leaves without them.</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Writing %n line(s) as one step</source>
        <translation>
            <numerusform>Writing %n line as one step</numerusform>
            <numerusform>Writing %n lines as one step</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>; %n meter reading(s) wait for a word about a renewed meter</source>
        <translation>
            <numerusform>; %n meter reading waits for a word about a renewed meter</numerusform>
            <numerusform>; %n meter readings wait for a word about a renewed meter</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::NotebookForm</name>
    <message numerus="yes">
        <source>%1, %n line(s)</source>
        <translation>
            <numerusform>%1, %n line</numerusform>
            <numerusform>%1, %n lines</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>wm::ui::ScheduleOffer</name>
    <message numerus="yes">
        <source>%1, %n task(s)</source>
        <translation>
            <numerusform>%1, %n task</numerusform>
            <numerusform>%1, %n tasks</numerusform>
        </translation>
    </message>
</context>
</TS>
