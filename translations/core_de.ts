<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
    <context>
        <name>core</name>
        <message>
            <source>The box file has no lens: distortion is not corrected and the interval is wider. Calibrate the lens.</source>
            <translation>Die Boxdatei hat kein Objektiv: Die Verzeichnung bleibt, und das Intervall ist weiter. Das Objektiv kalibrieren.</translation>
        </message>
        <message>
            <source>The box file has no media: refraction is not corrected and the interval is wider. Measure the box.</source>
            <translation>Die Boxdatei sagt nichts von Scheibe und Wasser: Die Brechung bleibt, und das Intervall ist weiter. Die Box ausmessen.</translation>
        </message>
        <message>
            <source>The photo has another size than the lens photos, in the same proportion: the lens was scaled to it.</source>
            <translation>Das Foto hat eine andere Größe als die Objektivfotos, im selben Seitenverhältnis: Das Objektiv wurde darauf umgerechnet.</translation>
        </message>
        <message>
            <source>The photo's proportions differ from the lens photos': the lens was not used. Use the same camera setting.</source>
            <translation>Das Seitenverhältnis ist anders als bei den Objektivfotos: Das Objektiv wurde nicht verwendet. Dieselbe Kameraeinstellung nehmen.</translation>
        </message>
        <message>
            <source>The photo is from another camera than the lens photos: the lens was not used. Use that camera, or calibrate the lens of this one.</source>
            <translation>Das Foto ist von einer anderen Kamera als die Objektivfotos: Das Objektiv wurde nicht verwendet. Jene Kamera nehmen oder das Objektiv dieser kalibrieren.</translation>
        </message>
        <message>
            <source>The photo has another focal length than the lens photos: the lens was not used. Set zoom and camera as then.</source>
            <translation>Das Foto hat eine andere Brennweite als die Objektivfotos: Das Objektiv wurde nicht verwendet. Zoom und Kamera wie damals einstellen.</translation>
        </message>
        <message>
            <source>Some of the plate's markers were not found. Uncover and clean the plate.</source>
            <translation>Einige Marker der Platte wurden nicht gefunden. Die Platte freimachen und reinigen.</translation>
        </message>
        <message>
            <source>The camera stood oblique to the plate. Square it up.</source>
            <translation>Die Kamera stand schräg zur Platte. Gerade ausrichten.</translation>
        </message>
        <message>
            <source>The plate stands upside down in the photo. Lengths hold; turn the plate or the camera.</source>
            <translation>Die Platte steht im Foto auf dem Kopf. Die Längen gelten; Platte oder Kamera drehen.</translation>
        </message>
        <message>
            <source>The photo does not say when it was taken. Set the camera's clock.</source>
            <translation>Das Foto sagt nicht, wann es gemacht wurde. Die Uhr der Kamera stellen.</translation>
        </message>
        <message>
            <source>No animal card was found in the photo. Say which animal it is.</source>
            <translation>Im Foto wurde keine Tierkarte gefunden. Angeben, welches Tier es ist.</translation>
        </message>
        <message>
            <source>More than one animal card is in the photo. Say which animal it is.</source>
            <translation>Im Foto ist mehr als eine Tierkarte. Angeben, welches Tier es ist.</translation>
        </message>
        <message>
            <source>More than one animal is in the photo: the card cannot tell whose is whose. Say which is which.</source>
            <translation>Im Foto ist mehr als ein Tier: Die Karte kann nicht sagen, welches welches ist. Angeben, wer wer ist.</translation>
        </message>
        <message>
            <source>The photo is blurred against the animal's size. Focus on the animal and repeat.</source>
            <translation>Das Foto ist für die Größe des Tieres unscharf. Auf das Tier scharfstellen und wiederholen.</translation>
        </message>
        <message>
            <source>The animal is small in the photo: the interval is wide. Move the camera nearer.</source>
            <translation>Das Tier ist klein im Bild: Das Intervall ist weit. Mit der Kamera näher herangehen.</translation>
        </message>
        <message>
            <source>Glare cuts into the animal's outline. Move the light and repeat.</source>
            <translation>Ein Reflex schneidet in den Umriss. Das Licht versetzen und wiederholen.</translation>
        </message>
        <message>
            <source>The photo is too dark or too light. Correct the exposure and repeat.</source>
            <translation>Das Foto ist zu dunkel oder zu hell. Die Belichtung ändern und wiederholen.</translation>
        </message>
        <message>
            <source>The animal reaches the edge of the photo or of the plate. Centre it and repeat.</source>
            <translation>Das Tier reicht an den Rand von Foto oder Platte. In die Mitte nehmen und wiederholen.</translation>
        </message>
        <message>
            <source>The trunk is bent too much for a fair depth. Wait until it straightens.</source>
            <translation>Der Rumpf ist für eine faire Tiefe zu stark gebogen. Warten, bis er sich streckt.</translation>
        </message>
        <message>
            <source>The tail closes on itself and hides length. Wait until it opens by itself; never force it.</source>
            <translation>Der Schwanz schließt sich und verbirgt Länge. Warten, bis er sich von selbst öffnet; nie zwingen.</translation>
        </message>
        <message>
            <source>The tail is curled; its gaps are seen and the length was followed round.</source>
            <translation>Der Schwanz ist eingerollt; seine Lücken sind zu sehen, und die Länge wurde ringsum verfolgt.</translation>
        </message>
        <message>
            <source>The outline does not agree with a body along its midline. Look at the overlay before you believe it.</source>
            <translation>Der Umriss passt nicht zu einem Körper entlang seiner Mittellinie. Erst ansehen, dann glauben.</translation>
        </message>
        <message>
            <source>Which end is the head is not certain. Check the landmarks.</source>
            <translation>Welches Ende der Kopf ist, ist nicht sicher. Die Messpunkte prüfen.</translation>
        </message>
        <message>
            <source>The base of the caudal fin was not seen clearly: the tail's end is less certain.</source>
            <translation>Der Ansatz der Schwanzflosse war nicht klar zu sehen: Das Schwanzende ist weniger sicher.</translation>
        </message>
        <message>
            <source>Girth uses the shape's usual width, not a second view. Add a photo from above or from the front.</source>
            <translation>Der Umfang nutzt die übliche Breite der Gestalt, keine zweite Ansicht. Ein Foto von oben oder vorn hinzufügen.</translation>
        </message>
        <message>
            <source>Girth uses the width seen in the second view.</source>
            <translation>Der Umfang nutzt die in der zweiten Ansicht gesehene Breite.</translation>
        </message>
        <message>
            <source>Brooding or carrying: this animal is not judged on girth.</source>
            <translation>Trägt Eier oder Junge: Dieses Tier wird nicht nach dem Umfang beurteilt.</translation>
        </message>
        <message>
            <source>A person moved a landmark.</source>
            <translation>Jemand hat einen Messpunkt verschoben.</translation>
        </message>
        <message>
            <source>A person drew, cut or joined a part of the outline.</source>
            <translation>Jemand hat einen Teil des Umrisses gezeichnet, getrennt oder verbunden.</translation>
        </message>
        <message>
            <source>The animal's shape was told from its outline and is not certain.</source>
            <translation>Die Gestalt des Tieres wurde aus dem Umriss geschlossen und ist nicht sicher.</translation>
        </message>
        <message>
            <source>The box did not measure true in the check before or after. Mend it, check it, and measure again.</source>
            <translation>Die Box maß bei der Prüfung davor oder danach nicht richtig. In Ordnung bringen, prüfen und neu messen.</translation>
        </message>
        <message>
            <source>The box was checked too long before this measure. Check it with a rod.</source>
            <translation>Die Box wurde zu lange vor dieser Messung geprüft. Mit einem Stab prüfen.</translation>
        </message>
        <message>
            <source>Standard length</source>
            <translation>Standardlänge</translation>
        </message>
        <message>
            <source>Height</source>
            <translation>Höhe</translation>
        </message>
        <message>
            <source>Head length</source>
            <translation>Kopflänge</translation>
        </message>
        <message>
            <source>Trunk length</source>
            <translation>Rumpflänge</translation>
        </message>
        <message>
            <source>Tail length</source>
            <translation>Schwanzlänge</translation>
        </message>
        <message>
            <source>Trunk depth</source>
            <translation>Rumpftiefe</translation>
        </message>
        <message>
            <source>Trunk width</source>
            <translation>Rumpfbreite</translation>
        </message>
        <message>
            <source>Girth</source>
            <translation>Umfang</translation>
        </message>
        <message>
            <source>Depth ratio</source>
            <translation>Tiefenverhältnis</translation>
        </message>
        <message>
            <source>Girth ratio</source>
            <translation>Umfangsverhältnis</translation>
        </message>
        <message>
            <source>Belly hollow</source>
            <translation>Bauchhöhlung</translation>
        </message>
        <message>
            <source>snout tip</source>
            <translation>Schnauzenspitze</translation>
        </message>
        <message>
            <source>coronet</source>
            <translation>Krönchen</translation>
        </message>
        <message>
            <source>head end</source>
            <translation>Kopfende</translation>
        </message>
        <message>
            <source>trunk end</source>
            <translation>Rumpfende</translation>
        </message>
        <message>
            <source>tail end</source>
            <translation>Schwanzende</translation>
        </message>
        <message>
            <source>side</source>
            <translation>Seite</translation>
        </message>
        <message>
            <source>front</source>
            <translation>vorn</translation>
        </message>
        <message>
            <source>above</source>
            <translation>oben</translation>
        </message>
        <message>
            <source>mirror</source>
            <translation>Spiegel</translation>
        </message>
        <message>
            <source>Print the plate</source>
            <translation>Platte drucken</translation>
        </message>
        <message>
            <source>Steel rule</source>
            <translation>Stahlmaßstab</translation>
        </message>
        <message>
            <source>Lens photos</source>
            <translation>Objektivfotos</translation>
        </message>
        <message>
            <source>Water and window</source>
            <translation>Wasser und Scheibe</translation>
        </message>
        <message>
            <source>Animal's plane</source>
            <translation>Ort des Tieres</translation>
        </message>
        <message>
            <source>Rod check</source>
            <translation>Stabprüfung</translation>
        </message>
        <message>
            <source>behind tankmates</source>
            <translation>hinter den Beckengenossen</translation>
        </message>
        <message>
            <source>stalled</source>
            <translation>wächst nicht mehr</translation>
        </message>
        <message>
            <source>thin</source>
            <translation>dünn</translation>
        </message>
        <message>
            <source>getting thinner</source>
            <translation>wird dünner</translation>
        </message>
        <message>
            <source>measure doubtful</source>
            <translation>Maß zweifelhaft</translation>
        </message>
        <message>
            <source>cannot tell</source>
            <translation>nicht zu sagen</translation>
        </message>
    </context>
</TS>
